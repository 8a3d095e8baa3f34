// Runs beside the page: holds the engine, answers one call after the other.
"use strict";

const TRAY_SERIES = ["level_above_floor", "root_tip_above_floor", "ec_25C", "ph", "transpiration", "thirst",
  "fresh_mass", "leaf_area_index", "wet_root_share", "solution", "solution_temperature", "oxygen"];
const RESERVOIR_SERIES = ["level", "solution", "usable", "ec_25C"];

let page = null;
let readText = null;
let readFaults = [];
let ran = null;
let ranStepS = 0;

function read(text) {
  if (text !== readText) {
    readText = null;
    ran = null;
    readFaults = Array.from(page.read(text));
    readText = text;
  }
  return readFaults;
}

function series(vessels, kind, names) {
  return vessels.map(vessel => Object.fromEntries(
      names.map(name => [name, page.series(kind, vessel.name, name)])));
}

function shown(more) {
  const rig = JSON.parse(page.rig());
  return {text: readText, faults: [], rig, ...more,
    trays: series(rig.trays, "tray", TRAY_SERIES),
    reservoirs: series(rig.reservoirs, "reservoir", RESERVOIR_SERIES)};
}

function turned({text, moves}) {
  for (const {knob, to} of moves) {
    if (read(text).length > 0) {
      break;
    }
    text = page.turned(knob, String(to));
  }
  return text;
}

const CALLS = {
  async start({bytes}) {
    page = (await TeaVM.wasmGC.load(new Int8Array(bytes))).exports;
    return JSON.parse(page.columns());
  },
  files({name, files, beside}) {
    readText = null;
    page.call(name);
    for (const kind of ["log", "corrected"]) {
      const laid = beside[kind] || {name: "", text: ""};
      page.beside(kind, laid.name, laid.text);
    }
    for (const file of Object.keys(files)) {
      page.file(file, files[file]);
    }
  },
  glance({text, moves, stepS}) {
    const other = turned({text, moves});
    const faults = read(other);
    if (faults.length > 0) {
      return {text: other, faults};
    }
    page.glance(stepS);
    ran = other;
    ranStepS = stepS;
    return shown({stepS});
  },
  run({text, moves = [], members}) {
    const other = turned({text, moves});
    const faults = read(other);
    if (faults.length > 0) {
      return {text: other, faults};
    }
    page.run(members);
    ran = null;
    return shown({result: JSON.parse(page.result()), members});
  },
  // Whatever ran here meanwhile: the text is run again, alone, where it was another.
  drawing({text, stepS, tray, hour}) {
    if (read(text).length > 0) {
      return "";
    }
    if (ran !== text || ranStepS !== stepS) {
      page.glance(stepS);
      ran = text;
      ranStepS = stepS;
    }
    return page.drawing(tray, hour);
  },
  table: ({width}) => page.table(width),
  csv: ({kind, place}) => page.csv(kind, place),
  everyBit: () => page.everyBit()
};

function buffers(made) {
  return [...(made && made.trays || []), ...(made && made.reservoirs || [])]
      .flatMap(vessel => Object.values(vessel).map(values => values.buffer));
}

async function answer({id, call, given}) {
  try {
    const made = await CALLS[call](given);
    self.postMessage({id, answer: made}, buffers(made));
  } catch (fault) {
    readText = null;
    self.postMessage({id, fault: String(fault && fault.message || fault)});
  }
}

// One after the other: the first one waits for the engine.
let last = Promise.resolve();
self.onmessage = ({data}) => {
  last = last.then(() => answer(data));
};
