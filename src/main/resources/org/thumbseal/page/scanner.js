// A barcode scanner types like a very fast person and ends with Enter. What it types belongs to the
// pump's number, wherever the focus is; not to a button that happens to have it.

const LONGEST_PAUSE = 80;
const SHORTEST_CODE = 3;
const GS = "\u001d";

export function listenToScanner(take) {
  let typed = "";
  let last = 0;
  document.addEventListener(
    "keydown",
    (event) => {
      if (event.altKey || event.metaKey) return;
      if (event.target.closest("input:not([type=radio])")) {
        keepSeparator(event);
        return;
      }
      const now = performance.now();
      if (now - last > LONGEST_PAUSE) typed = "";
      if (event.key === "Enter" && typed.length >= SHORTEST_CODE) {
        event.preventDefault();
        event.stopPropagation();
        take(typed);
        typed = "";
        return;
      }
      const character = characterOf(event);
      if (character) {
        if (typed) event.preventDefault();
        typed += character;
        last = now;
      }
    },
    true,
  );
}

/** Some scanners send the group separator as Ctrl-], its name of old. */
function characterOf(event) {
  if (event.ctrlKey) return event.key === "]" ? GS : undefined;
  return event.key.length === 1 ? event.key : undefined;
}

/** A field of text would lose it, and with it where one part of the code ends. */
function keepSeparator(event) {
  if (characterOf(event) === GS) {
    event.preventDefault();
    event.target.setRangeText(GS, event.target.selectionStart, event.target.selectionEnd, "end");
  }
}
