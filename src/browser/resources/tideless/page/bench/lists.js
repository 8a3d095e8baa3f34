// Verdict, tasks, warnings and the numbers of a day.

function showVerdict(place, result) {
  place.replaceChildren(...result.verdict.map(line => made("p", {}, line)));
  const is = !result.survives ? "harm"
    : result.warnings.length > 0 || result.looks.some(look => look.grave) ? "warned" : "good";
  ["harm", "warned", "good"].forEach(one => place.classList.toggle(one, one === is));
}

// What the command check has to look at.
function showLooks(place, {looks}) {
  place.hidden = looks.length === 0;
  place.replaceChildren(...(looks.length === 0 ? [] : [made("p", {}, "To look at before it is built or planted:"),
    made("ul", {}, ...looks.map(look => made("li", {class: look.grave && "grave"}, look.text)))]));
}

function showFaults(place, faults, head) {
  place.hidden = faults.length === 0;
  const told = faults.slice(0, 20);
  place.replaceChildren(...(faults.length === 0 ? [] : [made("p", {}, head),
    ...told.map(fault => made("pre", {}, fault)),
    ...(told.length < faults.length ? [made("p", {}, `and ${faults.length - told.length} more`)] : [])]));
}

// What comes before the run, as sowing does, is told on its first day.
function dayOf(atS) {
  return Math.max(0, Math.floor(atS / DAY_S));
}

function whyOf(task) {
  return task.why + (task.likely ? "; " + task.likely : "");
}

// Every task; its date is a button that goes to the day.
function showTasks(place, result, goTo) {
  place.replaceChildren(result.tasks.length === 0
    ? made("p", {}, "Nothing to do before the end of the run.")
    : made("ol", {class: "tasks"}, ...result.tasks.map(task => oneTask(task, goTo))));
}

function oneTask(task, goTo) {
  const day = dayOf(task.atS);
  return made("li", {"data-day": day, "data-text": task.text},
    made("button", {type: "button", onclick: () => goTo(day)}, task.when), " ",
    made("strong", {}, task.name), `, ${task.vessel}${task.litres ? `, ${task.litres} L` : ""}`,
    made("div", {}, whyOf(task)),
    ...(task.care.length === 0 ? [] : [made("details", {class: "care"}, made("summary", {}, "care"),
      made("ul", {}, ...task.care.map(care => made("li", {}, care))))]));
}

function showWarnings(place, result) {
  place.replaceChildren(result.warnings.length === 0
    ? made("p", {}, result.looks.length === 0 ? "No warnings." : "No warnings; what is to be looked at stands under the verdict.")
    : made("ul", {}, ...result.warnings.map(warning => made("li", {}, warning.text))));
}

function markDay(place, day) {
  for (const item of place.querySelectorAll("li[data-day]")) {
    item.classList.toggle("on", Number(item.dataset.day) === day);
  }
}

function pair(term, ...value) {
  return made("div", {}, made("dt", {}, term), made("dd", {}, ...value));
}

// Numbers of one day, and why something is to be done on it.
function showNumbers(place, run, tray, day) {
  const now = run.trays[tray];
  const told = run.rig.trays[tray];
  const last = 24 * day + EVENING;
  const at = (name, places) => digits(now[name][last], places);
  const ofDay = name => daily(now[name].subarray(24 * day, 24 * day + 24))[0];
  const pairs = [
    pair("Level at 23:00", at("level_above_floor", 0), " mm; cups at ", digits(10 * told.cup, 0), " mm"),
    pair("EC", at("ec_25C", 2), " mS/cm"),
    pair("pH", at("ph", 1)),
    pair("Drunk", digits(ofDay("transpiration"), 2), " L of ", digits(ofDay("thirst"), 2), " L wanted"),
    pair("Root tips", at("root_tip_above_floor", 0), " mm; ", digits(100 * now.wet_root_share[last], 0), " % of the root wet"),
    pair("A plant", at("fresh_mass", 0), " g fresh"),
    pair("Solution", at("solution", 1), " L at ", at("solution_temperature", 1), " \u00b0C"),
    pair("Oxygen", at("oxygen", 1), " mg/L, likely")];
  if (told.reservoir !== undefined) {
    const held = run.reservoirs[told.reservoir];
    pairs.push(pair("Reservoir", digits(held.usable[last], 1), " L usable, EC ", digits(held.ec_25C[last], 2)));
  }
  const reasons = run.result
    ? [...run.result.tasks.filter(task => dayOf(task.atS) === day).map(task => task.text),
      ...run.result.warnings.filter(w => dayOf(w.atS) <= day && day <= dayOf(w.untilS)).map(w => "Warned of: " + w.text)]
    : [];
  const visit = run.rig.visitDays.includes(day) ? "somebody looks" : "nobody comes";
  place.replaceChildren(made("h3", {}, `${weekday(run.rig, day)}, day ${day + 1}: ${visit}`), made("dl", {}, ...pairs),
    ...(reasons.length > 0 ? [made("ul", {}, ...reasons.map(text => made("li", {}, text)))] : []));
}
