// What the page holds, and what happens when somebody moves, opens, plays or pins.

// Longest step while a slider is under way, s: the hourly series then come at the least cost.
const GLANCE_STEP_S = 3600;
const SETTLE_MS = 250;
const LONG_MS = 1500;
const EVENING = 22;

const bench = {
  text: "", firstText: "", name: "scenario.toml", files: {}, beside: {}, shown: null, pinned: null, tray: 0, day: 0,
  playing: null, moving: null, waiting: null, settling: null, timings: [], glanceOff: ""
};

function busy(words) {
  const place = inPage("busy");
  if (place.textContent !== words) {
    place.textContent = words;
  }
}

// What takes long enough to be missed is said, the latest of several, until it is done.
const signs = new Set();

function whileBusy(promise, words) {
  const sign = {words};
  const say = () => busy(signs.size > 0 ? [...signs].at(-1).words : "");
  const timer = setTimeout(() => {
    signs.add(sign);
    say();
  }, 200);
  return promise.finally(() => {
    clearTimeout(timer);
    signs.delete(sign);
    say();
  });
}

function setRun(run) {
  bench.shown = run;
  bench.text = run.text;
  bench.tray = Math.min(bench.tray, run.rig.trays.length - 1);
  bench.day = Math.min(bench.day, run.rig.days - 1);
}

function showRun() {
  const run = bench.shown;
  const rig = run.rig;
  document.title = rig.title;
  inPage("title").textContent = rig.title;
  inPage("span").textContent = `${rig.span}, ${rig.days} day${rig.days === 1 ? "" : "s"}`;
  inPage("legend").textContent = rig.drawingKey;
  showTrays(rig);
  knobs.show(rig, bench.tray);
  showPinned();
  drawCurves();
  showDay();
  ownText.show();
  inPage("back").disabled = bench.text === bench.firstText;
  inPage("step-said").textContent = run.result
    ? `In steps of at most ${rig.stepS / 60} min, as the command line runs it.${bench.glanceOff}`
    : "A glance in steps of 1 h; as soon as you let go it is run as the command line does.";
}

function showJudged() {
  const result = bench.shown.result;
  showVerdict(inPage("verdict"), result);
  showLooks(inPage("looks"), result);
  showTasks(inPage("tasks"), result, goTo);
  showWarnings(inPage("warnings"), result);
  showDay();
  aged(false);
  ["pin", "save-csv", "save-png"].forEach(id => inPage(id).disabled = false);
  inPage("sure").disabled = bench.shown.members > 1;
  inPage("alone").hidden = bench.shown.members > 1;
  showTerminal();
}

const JUDGED = ["verdict", "looks", "tasks", "warnings"];

// What is told beside the faults of a rig that cannot run is of another, and looks and says so.
function showCannot(faults, head) {
  showFaults(inPage("faults"), faults, head);
  const isOfLast = faults.length > 0 && bench.shown !== null;
  inPage("of-last").hidden = !isOfLast;
  inPage("of-last").textContent = isOfLast ? `What follows is of the last rig that could run: ${bench.shown.rig.title}.` : "";
  JUDGED.forEach(id => inPage(id).classList.toggle("last", isOfLast));
}

// What is judged belongs to the run before, while a new one is not yet judged.
function aged(old) {
  JUDGED.forEach(id => {
    inPage(id).classList.toggle("old", old);
    inPage(id).setAttribute("aria-busy", String(old));
  });
}

function showTrays(rig) {
  const list = inPage("tray");
  const labels = rig.trays.map(tray => `${tray.name} (${tray.crop})`);
  if (list.dataset.labels !== labels.join("\n")) {
    list.dataset.labels = labels.join("\n");
    list.replaceChildren(...labels.map((label, at) => made("option", {value: at}, label)));
  }
  list.value = String(bench.tray);
  const files = [["tasks", 0, "tasks"], ["warnings", 0, "warnings"],
    ...rig.reservoirs.map((r, at) => ["reservoir", at, r.label + ", by the hour"]),
    ...rig.trays.map((t, at) => ["tray", at, t.label + ", by the hour"]),
    ...rig.trays.map((t, at) => ["daily", at, t.label + ", by the day"])];
  const csv = inPage("csv");
  if (csv.dataset.files !== JSON.stringify(files)) {
    csv.dataset.files = JSON.stringify(files);
    csv.replaceChildren(...files.map(([kind, at, label]) => made("option", {value: `${kind} ${at}`}, label)));
  }
}

function plotsNow() {
  return PLOTS.filter(plot => !plot.wanted || plot.wanted(bench.shown.rig.trays[bench.tray]));
}

function drawCurves() {
  const place = inPage("plots");
  const wanted = plotsNow();
  if (place.dataset.plots !== wanted.map(plot => plot.id).join()) {
    place.dataset.plots = wanted.map(plot => plot.id).join();
    place.replaceChildren(...wanted.map(plot => {
      const canvas = made("canvas", {role: "img", "data-plot": plot.id});
      canvas.title0 = `${plot.title}, ${plot.unit}`;
      canvas.addEventListener("pointerdown", event => clicked(canvas, event));
      return made("figure", {}, made("figcaption", {}, plot.title + " ", made("span", {}, plot.unit)), canvas);
    }));
  }
  const colours = coloursNow();
  const pinned = bench.pinned && bench.pinned.rig.trays[bench.tray] ? bench.pinned : null;
  for (const canvas of place.querySelectorAll("canvas")) {
    const plot = wanted.find(one => one.id === canvas.dataset.plot);
    const fits = pinned && (!plot.wanted || plot.wanted(pinned.rig.trays[bench.tray]));
    drawPlot(canvas, plot, bench.shown, fits ? pinned : null, bench.tray, bench.day, colours);
    const says = plot.lines(bench.shown, bench.tray).map(one => one.says).join(", dashed ");
    canvas.previousElementSibling.querySelector("span").textContent = `${plot.unit}${plot.unit ? "; " : ""}${says}`
      + (fits ? "; dotted the pinned run" : "");
  }
}

function clicked(canvas, event) {
  const box = canvas.getBoundingClientRect();
  goTo(Math.floor(canvas.axes.day(event.clientX - box.left)));
}

function goTo(day) {
  bench.day = Math.max(0, Math.min(bench.shown.rig.days - 1, day));
  drawCurves();
  showDay();
}

// The picture and the numbers are those of the evening, an hour before midnight.
function showDay(hour = 24 * bench.day + EVENING) {
  const run = bench.shown;
  const slider = inPage("day");
  slider.max = String(run.rig.days - 1);
  slider.value = String(bench.day);
  inPage("day-said").textContent = `${bench.day + 1} of ${run.rig.days}, ${weekday(run.rig, bench.day)}`;
  slider.setAttribute("aria-valuetext", inPage("day-said").textContent);
  section.show(quick, run, bench.tray, hour);
  showNumbers(inPage("numbers"), run, bench.tray, bench.day);
  markDay(inPage("tasks"), bench.day);
}

// Moving.

function move(knob, to) {
  bench.waiting = bench.waiting && bench.waiting.knob !== knob
    ? {...bench.waiting, earlier: [...(bench.waiting.earlier || []), {knob: bench.waiting.knob, to: bench.waiting.to}], knob, to}
    : {...(bench.waiting || {since: performance.now()}), knob, to};
  knobs.pending = true;
  if (!bench.moving) {
    glance();
  }
}

async function glance() {
  const {knob, to, earlier = [], since} = bench.waiting;
  bench.waiting = null;
  clearTimeout(bench.settling);
  bench.moving = quick.call("glance", {text: bench.text, moves: [...earlier, {knob, to}], stepS: GLANCE_STEP_S});
  try {
    const run = await whileBusy(bench.moving, "Running\u2026");
    knobs.pending = bench.waiting !== null;
    if (run.faults.length > 0) {
      showCannot(run.faults, "As it is set now it cannot run. The last season that could is shown.");
    } else {
      showCannot([], "");
      setRun(run);
      aged(true);
      showRun();
    }
    settleSoon();
    bench.timings.push({engine: performance.now() - since});
    requestAnimationFrame(() => {
      bench.timings[bench.timings.length - 1].drawn = performance.now() - since;
    });
  } catch (fault) {
    failed(fault);
  } finally {
    bench.moving = null;
    if (bench.waiting) {
      glance();
    }
  }
}

function settleSoon() {
  clearTimeout(bench.settling);
  bench.settling = setTimeout(settle, SETTLE_MS);
}

// How far the glance lay from the run in the scenario's own steps, over all trays and hours.
function offBy(glance, run) {
  const most = name => greatest(run.trays.map((tray, at) => greatest(tray[name].map((value, hour) =>
    Math.abs(value - glance.trays[at][name][hour]) || 0))));
  return ` While you move, steps are of 1 h: for this rig off by at most ${digits(most("level_above_floor"), 2)} mm of level,`
    + ` ${digits(most("ec_25C"), 3)} mS/cm, ${digits(most("ph"), 2)} of pH and ${digits(most("fresh_mass"), 1)} g a plant.`;
}

// Runs what is shown as the command line does, and drops an older such run that takes long.
async function settle(members = 1) {
  const text = bench.text;
  if (bench.shown.result && bench.shown.members >= members) {
    aged(false);
    return bench.shown;
  }
  if (exact.busyFor() > LONG_MS) {
    exact.restart();
  }
  try {
    const run = await whileBusy(exact.call("run", {text, members}), members > 1 ? `Running ${members} rigs\u2026` : "Running\u2026");
    if (run.text === bench.text && run.faults.length === 0) {
      bench.glanceOff = bench.shown.result ? bench.glanceOff : offBy(bench.shown, run);
      setRun(run);
      showRun();
      showJudged();
    }
    return run;
  } catch (fault) {
    failed(fault);
    return null;
  }
}

function failed(fault) {
  if (!fault.dropped) {
    const faults = [/is written in a way/.test(fault.message) ? fault.message
      : `The engine met a fault of its own${inBrackets(fault)}. Save the scenario: the program on the command line may run it, or tell more.`];
    showFaults(inPage("faults"), faults, "Nothing was changed.");
  }
}

function inBrackets(fault) {
  return fault.message ? ` (${fault.message})` : "";
}

function laidNow() {
  const {name, files, beside} = bench;
  return {name, files, beside};
}

// Reads a whole text: the one that came with the page, one typed, one opened, or the one that was moved. The draft that
// makes room for it is the one of now, if any.
async function take(text, laid, was = ownText.draft) {
  stopPlaying();
  clearTimeout(bench.settling);
  const before = laidNow();
  quick.lay(laid);
  const run = await whileBusy(quick.call("glance", {text, moves: [], stepS: GLANCE_STEP_S}), "Running\u2026").catch(fault => {
    quick.lay(before);
    throw fault;
  });
  if (run.faults.length > 0) {
    cannotTake(text, laid, run.faults, was);
    return;
  }
  Object.assign(bench, laid);
  exact.lay(laid);
  showFiles(laid);
  showCannot([], "");
  bench.firstText = text;
  bench.day = run.rig.opensOn;
  knobs.forget();
  setRun(run);
  aged(true);
  ownText.runs(text, was);
  showRun();
  await settle();
}

// The rig shown is moved on among its own files; the text is kept for whoever wrote it.
function cannotTake(text, laid, faults, was) {
  showCannot(faults, `${laid.name} cannot run. ${bench.shown ? "The last season that could is shown." : ""}`);
  ownText.cannot(text, laid, faults, was);
  if (bench.shown) {
    quick.lay(laidNow());
    settleSoon();
  } else {
    Object.assign(bench, laid);
  }
  showFiles(laid);
}

function showFiles({files, beside}) {
  const laid = Object.values(beside).map(one => `read with ${one.name}`);
  inPage("files-said").textContent = Object.keys(files).concat(laid).join(", ") && `Beside it: ${Object.keys(files).concat(laid).join(", ")}`;
}

// Playing.

function stopPlaying() {
  cancelAnimationFrame(bench.playing);
  bench.playing = null;
  inPage("play").setAttribute("aria-pressed", "false");
  inPage("play").textContent = "Play the season";
}

function play() {
  if (bench.playing !== null) {
    stopPlaying();
    showDay();
    return;
  }
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  const from = bench.day >= bench.shown.rig.days - 1 ? 0 : bench.day;
  const begun = performance.now();
  inPage("play").setAttribute("aria-pressed", "true");
  inPage("play").textContent = "Stop";
  const perDayMs = still ? 1000 : Math.max(60, 20000 / bench.shown.rig.days);
  const step = now => {
    const days = from + Math.max(0, now - begun) / perDayMs; // the first frame may have begun before the press
    if (days >= bench.shown.rig.days) {
      stopPlaying();
      goTo(bench.shown.rig.days - 1);
      return;
    }
    if (Math.floor(days) !== bench.day) {
      goTo(Math.floor(days));
    } else if (!still) {
      section.show(quick, bench.shown, bench.tray, Math.floor(24 * days));
    }
    bench.playing = requestAnimationFrame(step);
  };
  bench.playing = requestAnimationFrame(step);
}

function pin() {
  bench.pinned = bench.pinned ? null : bench.shown;
  inPage("pin").textContent = bench.pinned ? "Unpin" : "Pin this run";
  inPage("pin").setAttribute("aria-pressed", String(bench.pinned !== null));
  const said = inPage("pinned-said");
  said.hidden = !bench.pinned;
  showPinned();
  drawCurves();
}

// What came of the pinned run, and what stood otherwise in it.
function showPinned() {
  if (!bench.pinned) {
    return;
  }
  const {rig, result} = bench.pinned;
  const told = knob => knob.choices[knob.chosen] || `${digits(knob.value, placesOf(knob.step))} ${knob.unit}`.trim();
  const other = rig.knobs.filter(knob => {
    const now = bench.shown.rig.knobs.find(one => one.id === knob.id);
    return now && told(now) !== told(knob);
  });
  inPage("pinned-said").textContent = `Pinned: ${result ? result.verdict[0] : rig.title}`
    + (other.length > 0 ? ` There: ${other.map(knob => `${knob.group}, ${knob.label} ${told(knob)}`).join("; ")}.` : "");
}

async function showTerminal() {
  if (inPage("terminal").open && bench.shown.result) {
    await exact.call("table", {width: 100}).then(table => inPage("table").textContent = table).catch(failed);
  }
}

// In and out.

async function loaded(text, name, moves = []) {
  await take(text, {name, files: {}, beside: {}}).catch(failed);
  moves.forEach(({knob, to}) => move(knob, to));
  inPage("answer").scrollIntoView();
}

async function opened(list, isSure = false) {
  const files = await readFiles(list);
  const scenario = files.find(file => isSure || isScenario(file.name, file.text)
    || list.length === 1 && file.name.endsWith(".toml") && !isCrop(file.text) && !isCorrections(file.text));
  ownText.look();
  // One that could not run yet, for want of the file that comes now, is the draft.
  const text = scenario ? scenario.text : ownText.text();
  const named = {...ownText.beside().files};
  const beside = scenario ? {} : {...ownText.beside().beside};
  for (const file of files) {
    if (file !== scenario) {
      isCorrections(file.text) ? beside.corrected = file : named[nameIn(text, file.name)] = file.text;
    }
  }
  await take(text, {name: scenario ? scenario.name : ownText.name(), files: named, beside}).catch(failed);
}

// The moves alone: what somebody wrote into the text box stands.
async function undone() {
  await take(bench.firstText, laidNow(), null).catch(failed);
}

async function runText() {
  ownText.look();
  const {files, beside} = ownText.beside();
  await take(ownText.text(), {name: ownText.name(), files, beside}).catch(failed);
}

async function saveCsv() {
  if (!bench.shown.result) {
    await settle();
  }
  const [kind, at] = inPage("csv").value.split(" ");
  const rig = bench.shown.rig;
  const name = kind === "tray" || kind === "daily" ? "-" + rig.trays[at].name : kind === "reservoir" ? "-" + rig.reservoirs[at].name : "";
  keepText(`${kind}${name}.csv`, await exact.call("csv", {kind, place: Number(at)}), "text/csv");
}

async function savePng() {
  const heads = [bench.shown.rig.title + ", " + bench.shown.rig.trays[bench.tray].label, bench.shown.result ? bench.shown.result.verdict[0] : ""];
  keep("curves.png", await pictureOf([...inPage("plots").querySelectorAll("canvas")], heads));
}

function wire() {
  inPage("tray").addEventListener("change", event => {
    bench.tray = Number(event.target.value);
    showRun();
  });
  inPage("day").addEventListener("input", event => {
    stopPlaying();
    goTo(Number(event.target.value));
  });
  inPage("play").addEventListener("click", play);
  inPage("pin").addEventListener("click", pin);
  inPage("back").addEventListener("click", undone);
  inPage("sure").addEventListener("click", () => settle(100));
  inPage("print").addEventListener("click", () => window.print());
  inPage("run-text").addEventListener("click", runText);
  inPage("text").addEventListener("paste", event => {
    const words = event.clipboardData.getData("text");
    if (!canBeEdited(words)) {
      event.preventDefault();
      take(words, {...laidNow(), name: fileOf(titleIn(words))}).catch(failed);
    }
  });
  inPage("save-text").addEventListener("click", () => keepText(ownText.name(), ownText.text(), "application/toml"));
  inPage("save-csv").addEventListener("click", () => saveCsv().catch(failed));
  inPage("save-png").addEventListener("click", savePng);
  inPage("open").addEventListener("change", event => opened(event.target.files));
  inPage("terminal").addEventListener("toggle", showTerminal);
  document.addEventListener("dragover", event => {
    event.preventDefault();
    document.body.classList.add("dropping");
  });
  document.addEventListener("dragleave", () => document.body.classList.remove("dropping"));
  document.addEventListener("drop", event => {
    document.body.classList.remove("dropping");
    if (event.dataTransfer.files.length > 0) { // words drawn into the text box go there
      event.preventDefault();
      opened(event.dataTransfer.files);
    }
  });
  // On paper all is light, whatever the screen is.
  const onPaper = isPaper => {
    document.documentElement.classList.toggle("paper", isPaper);
    again();
  };
  addEventListener("beforeprint", () => onPaper(true));
  addEventListener("afterprint", () => onPaper(false));
  const again = () => {
    if (bench.shown) {
      showRun();
    }
    if (bench.lesson) {
      bench.lesson.show();
    }
  };
  addEventListener("resize", again);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
}

let quick;
let exact;
const knobs = new Knobs(inPage("knobs"), move);
const ownText = new OwnText(() => bench, () => showCannot([], ""));
const section = new Section(inPage("section"), {busy: drawn => whileBusy(drawn, "Drawing\u2026"), failed});

async function begin() {
  wire();
  if (!knowsTheEngine()) {
    inPage("cannot").hidden = false;
    inPage("cannot").textContent = "This browser is too old for the engine in this page: it needs WebAssembly with garbage collection"
      + " (Chromium 119, Firefox 120, Safari 18.2 or newer). The program itself runs the same scenario on any Java 17.";
    inPage("span").textContent = "";
    return;
  }
  const [bytes, script] = await Promise.all(["engine", "worker"].map(id => unpacked(denseBytes(inPage(id).textContent.trim()))));
  quick = new Engine(bytes, script);
  exact = new Engine(bytes, script);
  await quick.begun;
  const {text, ...laid} = await unpackedJson("scenario");
  await take(text, laid, null);
  const texts = await unpackedJson("lessons-data");
  bench.lesson = new Lesson(inPage("lesson"), texts, {
    run: given => whileBusy(quick.call("run", {...given, members: 1}), "Running\u2026"),
    own: () => ({text: bench.text, rig: bench.shown.rig, tray: bench.tray}),
    load: loaded
  });
}

// What a test of the page takes hold of.
window.bench = Object.assign(bench, {
  ask: (call, given) => exact.call(call, given),
  open: (list, asScenario) => opened(list, asScenario),
  settled: members => settle(members),
  worksFor: () => Math.max(quick.busyFor(), exact.busyFor()),
  isQuiet: () => Boolean(bench.shown && bench.shown.result && bench.lesson && bench.lesson.guess)
    && !section.asking && bench.worksFor() === 0,
  lessons: LESSONS,
  failed,
  faultOf,
  async slide(knob, values) {
    bench.timings.length = 0;
    for (const value of values) {
      move(knob, String(value));
      await bench.moving;
      await new Promise(requestAnimationFrame);
      await new Promise(done => setTimeout(done));
    }
    return bench.timings;
  }
});
bench.ready = begin().then(() => {
  bench.readyMs = performance.now();
}).catch(fault => {
  inPage("cannot").hidden = false;
  inPage("cannot").textContent = `The engine did not start${inBrackets(fault)}.`;
});
