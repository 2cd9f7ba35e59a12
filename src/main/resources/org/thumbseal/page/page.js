"use strict";
const ports = new Map();
const events = new EventSource("/events");
function show() {
  const text = JSON.stringify([...ports.values()], null, 1);
  document.getElementById("state").textContent = text;
}
events.addEventListener("bench", (e) => {
  ports.clear();
  for (const port of JSON.parse(e.data).ports) {
    port.curve = port.curve.length;
    ports.set(port.port, port);
  }
  show();
});
events.addEventListener("port", (e) => {
  const change = JSON.parse(e.data);
  Object.assign(ports.get(change.port), change);
  show();
});
