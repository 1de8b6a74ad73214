// Looks up what the course has computed: for each setting a sentence of the table and the layers of a picture.
"use strict";
const drawn = JSON.parse(document.getElementById("drawn").textContent);
const controls = [...document.querySelectorAll("#controls input, #controls select")];
const rows = document.querySelector("#all tbody").rows;
const lead = document.getElementById("lead");
const rest = document.getElementById("rest");
const svg = document.querySelector("#picture svg");
const shown = [...svg.children].map(() => undefined);

function show() {
  let setting = 0;
  controls.forEach((control, i) => {
    const step = control.tagName === "SELECT" ? control.selectedIndex : Number(control.value);
    setting = setting * drawn.steps[i].length + step;
    if (control.tagName === "SELECT") return;
    control.setAttribute("aria-valuetext", drawn.steps[i][step]);
    document.getElementById("now" + i).textContent = drawn.steps[i][step];
  });
  const sentence = rows[setting].lastElementChild.textContent;
  const [box, alt, first, ...layers] = drawn.pictures[setting];
  lead.textContent = drawn.words[first];
  rest.textContent = sentence.slice(drawn.words[first].length);
  svg.toggleAttribute("hidden", !drawn.words[box]);
  svg.setAttribute("viewBox", drawn.words[box]);
  svg.setAttribute("aria-label", sentence + drawn.words[alt]);
  [...svg.children].forEach((place, i) => {
    if (shown[i] === layers[i]) return;
    shown[i] = layers[i];
    place.innerHTML = layers[i] === undefined ? "" : drawn.layers[layers[i]].map((piece) => drawn.pieces[piece]).join("");
  });
}

controls.forEach((control) => control.addEventListener("input", show));
document.getElementById("controls").hidden = false;
document.getElementById("off").hidden = true;
document.getElementById("all").open = false;
show();
