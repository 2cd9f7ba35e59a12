"use strict";
(() => {
  const list = document.getElementById("results");
  const sort = document.getElementById("sort");
  const numbers = new Set(["rise", "maximum"]);
  const compare = (by) => (a, b) => {
    const x = a.dataset[by];
    const y = b.dataset[by];
    if (x === "" || y === "") {
      return (x === "") - (y === "");
    }
    if (numbers.has(by)) {
      return Number(x) - Number(y);
    }
    const order = x < y ? -1 : x > y ? 1 : 0;
    return by === "time" ? -order : order;
  };
  sort.hidden = false;
  sort.addEventListener("click", (event) => {
    const by = event.target.dataset.by;
    if (by) {
      list.append(...[...list.children].sort(compare(by)));
    }
  });
})();
