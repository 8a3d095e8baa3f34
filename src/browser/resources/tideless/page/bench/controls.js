// Sliders and lists that move the scenario.

// Digits behind the point that tell one step from the next.
function placesOf(step) {
  return step < 0.1 ? 2 : step < 1 ? 1 : 0;
}

class Knobs {
  constructor(place, moved) {
    this.place = place;
    this.moved = moved;
    this.drawn = "";
    this.first = new Map();
  }

  // Builds them anew only where there are others than before, so that one under the hand stays.
  show(rig, tray) {
    const label = rig.trays[tray].label;
    const others = new Set(rig.trays.filter((_, at) => at !== tray).map(other => other.label));
    const knobs = rig.knobs.filter(knob => !others.has(knob.group) || knob.group === label);
    const ids = knobs.map(knob => knob.id + Object.keys(knob.choices)).join("\n");
    if (ids !== this.drawn) {
      this.drawn = ids;
      this.build(knobs);
    }
    for (const knob of knobs) {
      this.set(knob);
    }
  }

  build(knobs) {
    const groups = new Map();
    for (const knob of knobs) {
      groups.set(knob.group, [...(groups.get(knob.group) || []), knob]);
    }
    const hadFocus = document.activeElement && document.activeElement.dataset ? document.activeElement.dataset.knob : null;
    this.place.replaceChildren(...[...groups].map(([group, some]) =>
      made("fieldset", {}, made("legend", {}, group), ...some.map(knob => this.one(knob)))));
    const again = hadFocus && this.input(hadFocus);
    if (again) {
      again.focus();
    }
  }

  one(knob) {
    const id = "knob-" + knob.id.replace(/[^A-Za-z0-9_-]/g, "_");
    const isList = Object.keys(knob.choices).length > 0;
    const input = isList
      ? made("select", {id, "data-knob": knob.id, onchange: () => this.moved(knob.id, input.value)},
        ...Object.entries(knob.choices).map(([value, words]) => made("option", {value}, words)))
      : made("input", {id, "data-knob": knob.id, type: "range", step: "any",
        oninput: () => this.slid(knob.id, input)});
    if (!isList) {
      input.addEventListener("keydown", event => this.key(event, knob.id, input));
    }
    return made("div", {class: "knob", "data-of": knob.id},
      made("label", {for: id}, knob.label), made("output", {for: id}), input);
  }

  input(id) {
    return [...this.place.querySelectorAll("[data-knob]")].find(input => input.dataset.knob === id);
  }

  // A slider stands between its steps where the scenario does; a move goes to a step.
  slid(id, input) {
    const step = Number(input.dataset.step);
    const low = Number(input.min);
    const to = Math.min(Number(input.max), Math.max(low, Math.round(Number(input.value) / step) * step));
    const text = String(Math.round(to * 1e6) / 1e6);
    this.say(input, Number(text));
    this.moved(id, text);
  }

  key(event, id, input) {
    const steps = {ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10}[event.key];
    if (steps !== undefined) {
      event.preventDefault();
      input.value = Number(input.value) + steps * Number(input.dataset.step);
      this.slid(id, input);
    }
  }

  set(knob) {
    const input = this.input(knob.id);
    if (!this.first.has(knob.id)) {
      this.first.set(knob.id, knob.value + knob.chosen);
    }
    input.parentElement.classList.toggle("moved", this.first.get(knob.id) !== knob.value + knob.chosen);
    if (Object.keys(knob.choices).length > 0) {
      input.value = knob.chosen;
      return;
    }
    input.dataset.step = knob.step;
    input.dataset.unit = knob.unit;
    const own = document.activeElement === input && this.pending;
    // The ends stay where they were while one slider moves: they are told from where it stands.
    input.min = input.min === "" ? knob.low : Math.min(Number(input.min), knob.value);
    input.max = input.max === "" ? knob.high : Math.max(Number(input.max), knob.value);
    if (!own) {
      input.value = knob.value;
      this.say(input, knob.value);
    }
  }

  say(input, value) {
    const words = digits(value, placesOf(Number(input.dataset.step))) + (input.dataset.unit ? " " + input.dataset.unit : "");
    input.parentElement.querySelector("output").textContent = words;
    input.setAttribute("aria-valuetext", words);
  }

  forget() {
    this.drawn = "";
    this.first.clear();
  }
}
