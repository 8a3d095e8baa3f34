// The rig cut through, to scale: one tray and the reservoir that feeds it, at one hour of the season.

const SVG = "http://www.w3.org/2000/svg";

function drawn(name, attributes, ...inside) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    element.setAttribute(key, value);
  }
  element.append(...inside);
  return element;
}

// From pale in a lean solution over blue within the band to rust above it.
function saltColour(ec, low, high) {
  if (!Number.isFinite(ec)) {
    return colourOf("--grid");
  }
  const stops = [[0, "--lean"], [0.5 * (low + high), "--deep"], [1.6 * high, "--salty"]];
  const next = stops.findIndex(([at]) => ec <= at);
  if (next < 0) {
    return colourOf("--salty");
  }
  if (next === 0) {
    return colourOf("--lean");
  }
  const share = (ec - stops[next - 1][0]) / (stops[next][0] - stops[next - 1][0]);
  return mixed(colourOf(stops[next - 1][1]), colourOf(stops[next][1]), share);
}

function mixed(from, to, share) {
  const parts = hex => [1, 3, 5].map(at => parseInt(hex.slice(at, at + 2), 16));
  const a = parts(from);
  const b = parts(to);
  return "rgb(" + a.map((part, i) => Math.round(part + share * (b[i] - part))).join(",") + ")";
}

function foliage(told, run, tray, hour) {
  const freshG = run.trays[tray].fresh_mass[hour];
  const leafArea = run.trays[tray].leaf_area_index[hour];
  const plants = Math.max(1, told.plants);
  const groundCm2 = 1e4 * told.ground / plants;
  // As wide as its leaves would cover, up to its share of the ground; as high as a ball of its mass, for show.
  const wide = Math.sqrt(4 * groundCm2 * Math.min(1, Math.max(0.02, leafArea)) / Math.PI);
  return {freshG, wide, high: freshG > 0 ? Math.min(120, 4.5 * Math.cbrt(freshG)) : 0};
}

// A vessel with solution in it, its floor at the height of its own.
function vessel(x, told, levelCm, colour, bench) {
  const floorY = bench - told.floor;
  return [
    drawn("rect", {x, y: floorY - Math.min(levelCm, told.depth), width: told.length,
      height: Math.max(0, Math.min(levelCm, told.depth)), fill: colour}),
    drawn("path", {d: `M${x} ${floorY - told.depth}V${floorY}H${x + told.length}V${floorY - told.depth}`,
      fill: "none", stroke: colourOf("--ink"), "stroke-width": 0.6})];
}

function plantsIn(x, told, run, tray, hour, bench) {
  const floorY = bench - told.floor;
  const rimY = floorY - told.depth;
  const shown = Math.max(1, Math.min(told.plants, Math.ceil(Math.sqrt(told.plants * told.length / 40)), 12));
  const {freshG, wide, high} = foliage(told, run, tray, hour);
  const tipCm = run.trays[tray].root_tip_above_floor[hour] / 10;
  const parts = [];
  for (let i = 0; i < shown && told.plants > 0; i++) {
    const at = x + told.length * (i + 0.5) / shown;
    const cupY = floorY - told.cup;
    parts.push(drawn("path", {d: `M${at - 2.5} ${rimY}L${at - 1.8} ${cupY}H${at + 1.8}L${at + 2.5} ${rimY}`,
      fill: "none", stroke: colourOf("--quiet"), "stroke-width": 0.4}));
    if (freshG > 0) {
      const ends = Math.max(cupY, Math.min(floorY, floorY - tipCm));
      [-0.9, -0.3, 0.3, 0.9].forEach(lean => parts.push(drawn("path", {
        d: `M${at} ${cupY}Q${at + lean * 0.4} ${(cupY + ends) / 2} ${at + lean * 1.6} ${ends}`,
        fill: "none", stroke: colourOf("--rust"), "stroke-width": 0.35})));
      parts.push(drawn("ellipse", {cx: at, cy: rimY - high / 2, rx: Math.max(1, wide / 2), ry: Math.max(1, high / 2),
        fill: colourOf("--leaf"), "fill-opacity": 0.75, stroke: colourOf("--leaf"), "stroke-width": 0.3}));
    }
  }
  parts.push(drawn("line", {x1: x - 1, x2: x + told.length + 1, y1: rimY, y2: rimY,
    stroke: colourOf("--wood"), "stroke-width": 0.9}));
  return parts;
}

function caption(x, y, size, words, anchor = "middle") {
  return drawn("text", {x, y, "text-anchor": anchor, "font-size": size, fill: colourOf("--ink"),
    "font-family": "system-ui, sans-serif"}, words);
}

function drawSection(place, run, tray, hour) {
  const told = run.rig.trays[tray];
  const now = run.trays[tray];
  const source = told.reservoir === undefined ? null : run.rig.reservoirs[told.reservoir];
  const tops = [told.floor + told.depth + Math.max(12, greatestFoliage(told, run, tray))];
  const lowest = [told.floor, 0];
  let wide = told.length;
  if (source) {
    tops.push(source.floor + source.depth + 4);
    lowest.push(source.floor);
    wide += source.length + 12;
  }
  const top = Math.max(...tops);
  const bottom = Math.min(...lowest);
  const size = Math.max(2.2, Math.min(0.028 * wide, 0.05 * (top - bottom)) );
  const trayX = source ? source.length + 12 : 0;
  const bench = 0;
  const ec = now.ec_25C[hour];
  const parts = [drawn("line", {x1: -4, x2: wide + 4, y1: 0, y2: 0, stroke: colourOf("--wood"), "stroke-width": 1})];
  parts.push(...vessel(trayX, told, now.level_above_floor[hour] / 10, saltColour(ec, told.ecLow, told.ecHigh), bench));
  parts.push(...plantsIn(trayX, told, run, tray, hour, bench));
  parts.push(caption(trayX + told.length / 2, -told.floor + 1.5 * size, size,
    `${told.label}: ${digits(now.level_above_floor[hour], 0)} mm, EC ${digits(ec, 2)}`));
  if (source) {
    const held = run.reservoirs[told.reservoir];
    parts.push(...vessel(0, source, held.level[hour] / 10, saltColour(held.ec_25C[hour], told.ecLow, told.ecHigh), bench));
    const outletY = bench - source.floor - source.outlet;
    const valveY = bench - told.floor - (told.setting || 0);
    parts.push(drawn("path", {d: `M${source.length} ${outletY}H${source.length + 6}V${valveY}H${trayX + 3}`,
      fill: "none", stroke: colourOf("--quiet"), "stroke-width": 0.7}));
    parts.push(drawn("ellipse", {cx: trayX + 4.2, cy: valveY, rx: 1.8, ry: 0.9, fill: colourOf("--pin"),
      stroke: colourOf("--ink"), "stroke-width": 0.2}));
    const under = source.floor > 2 * size;
    parts.push(caption(source.length / 2, bench - source.floor + (under ? 1.4 * size : 1.5 * size), size,
      `${source.label}: ${digits(held.solution[hour], 1)} L`));
  }
  const svg = drawn("svg", {viewBox: `-5 ${-top - 2} ${wide + 10} ${top - bottom + 4 + 2 * size}`, role: "img",
    "aria-label": `${told.label} cut through: level ${digits(now.level_above_floor[hour], 0)} mm, `
      + `cups at ${digits(10 * told.cup, 0)} mm, root tips at ${digits(now.root_tip_above_floor[hour], 0)} mm, `
      + `EC ${digits(ec, 2)} mS/cm`}, ...parts);
  const close = closeUp(told, trayX, run, tray, hour);
  place.replaceChildren(svg, ...(source ? [close] : []));
}

// The tray alone, as large as it goes: the same drawing through a smaller window.
function closeUp(told, x, run, tray, hour) {
  const now = run.trays[tray];
  const high = Math.min(told.length / 2.6, told.depth + Math.max(8, greatestFoliage(told, run, tray)));
  return drawn("svg", {viewBox: `${x - 3} ${-told.floor - high} ${told.length + 6} ${high + 1.5}`, "aria-hidden": "true", class: "close"},
    ...vessel(x, told, now.level_above_floor[hour] / 10, saltColour(now.ec_25C[hour], told.ecLow, told.ecHigh), 0),
    ...plantsIn(x, told, run, tray, hour, 0));
}

function greatestFoliage(told, run, tray) {
  return Math.min(120, 4.5 * Math.cbrt(Math.max(0, greatest(run.trays[tray].fresh_mass)))) + 2;
}
