// A barcode scanner types like a person and ends with Enter. Whatever is typed while no field has the focus is
// the pump's number: it goes where a person would have to put it, and Enter there takes it.

const GS = "\u001d";

export function listenToScanner(field) {
  document.addEventListener(
    "keydown",
    (event) => {
      if (event.altKey || event.metaKey) return;
      const character = characterOf(event);
      if (!character) return;
      if (!event.target.closest("input:not([type=radio]), select")) begin(field, character);
      if (character === GS) keepSeparator(event);
    },
    true,
  );
}

/** The key itself comes after the focus, and so lands in the field. A space would press a button: it begins nothing. */
function begin(field, character) {
  if (character === " ") return;
  field.value = "";
  field.focus();
}

/** Some scanners send the group separator as Ctrl-], its name of old. */
function characterOf(event) {
  if (event.ctrlKey) return event.key === "]" ? GS : undefined;
  return event.key.length === 1 ? event.key : undefined;
}

/** A field of text would lose it, and with it where one part of the code ends. */
function keepSeparator(event) {
  const field = document.activeElement;
  event.preventDefault();
  field.setRangeText(GS, field.selectionStart, field.selectionEnd, "end");
}
