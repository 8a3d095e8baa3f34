// Curves over the days of a season, on canvases.

const LEFT = 46;
const RIGHT = 10;
const TOP = 8;
const BOTTOM = 20;

// What is drawn of one tray: each with its lines, and what they are held against.
const PLOTS = [
  {id: "level", title: "Level in the tray", unit: "mm above the floor", zero: true,
    lines: (run, tray) => [
      line("level", "--deep", [], run.trays[tray].level_above_floor),
      line("root tips", "--rust", [6, 3], run.trays[tray].root_tip_above_floor)],
    marks: told => [{at: 10 * told.cup, says: "cups"}, ...(told.setting ? [{at: 10 * told.setting,
      says: told.filling === "hand" ? "topped up to" : "valve shuts"}] : [])]},
  {id: "ec", title: "EC of the tray", unit: "mS/cm at 25 \u00b0C", zero: true,
    lines: (run, tray) => [line("EC", "--plum", [], run.trays[tray].ec_25C)],
    band: told => [told.ecLow, told.ecHigh]},
  {id: "drunk", title: "Drunk a day", unit: "L", zero: true,
    lines: (run, tray) => [
      line("drunk", "--deep", [], daily(run.trays[tray].transpiration), 24),
      line("thirst", "--rust", [2, 3], daily(run.trays[tray].thirst), 24)]},
  {id: "reservoir", title: "Reservoir", unit: "L above its outlet", zero: true,
    wanted: told => told.reservoir !== undefined,
    lines: (run, tray) => [line("left", "--teal", [], run.reservoirs[run.rig.trays[tray].reservoir].usable)]},
  {id: "mass", title: "A plant", unit: "g fresh", zero: true,
    lines: (run, tray) => [line("fresh mass", "--teal", [], run.trays[tray].fresh_mass)]},
  {id: "ph", title: "pH of the tray", unit: "", zero: false,
    lines: (run, tray) => [line("pH", "--plum", [], run.trays[tray].ph)],
    band: told => [told.phLow, told.phHigh]}
];

function line(says, colour, dash, values, hours = 1) {
  return {says, colour, dash, values, hours};
}

function colourOf(name) {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

// Sets a canvas to the pixels of the screen and gives its pen and its size in CSS pixels.
function penOf(canvas) {
  const ratio = window.devicePixelRatio || 1;
  const width = canvas.clientWidth || 600;
  const height = canvas.clientHeight || 176;
  if (canvas.width !== Math.round(width * ratio) || canvas.height !== Math.round(height * ratio)) {
    canvas.width = Math.round(width * ratio);
    canvas.height = Math.round(height * ratio);
  }
  const pen = canvas.getContext("2d");
  pen.setTransform(ratio, 0, 0, ratio, 0, 0);
  return {pen, width, height};
}

// Days across and values upwards, to pixels and back.
function axesOf(width, height, days, low, high) {
  const across = (width - LEFT - RIGHT) / days;
  const up = (height - TOP - BOTTOM) / (high - low);
  return {days, low, high, width, height,
    x: day => LEFT + day * across,
    y: value => height - BOTTOM - (value - low) * up,
    day: x => (x - LEFT) / across,
    value: y => low + (height - BOTTOM - y) / up};
}

function rangeOf(plot, all, band, marks) {
  let low = plot.zero ? 0 : Infinity;
  let high = -Infinity;
  for (const one of all) {
    low = Math.min(low, least(one.values));
    high = Math.max(high, greatest(one.values));
  }
  for (const value of [...(band || []), ...marks.map(mark => mark.at)]) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (!(high > low)) {
    high = (Number.isFinite(low) ? low : 0) + 1;
    low = Number.isFinite(low) ? low : 0;
  }
  const room = 0.04 * (high - low);
  return [plot.zero && low >= 0 ? 0 : low - room, high + room];
}

function drawGrid(pen, axes, rig, colours) {
  pen.font = "11px system-ui, sans-serif";
  pen.lineWidth = 1;
  pen.fillStyle = colours.quiet;
  pen.strokeStyle = colours.grid;
  pen.textBaseline = "middle";
  pen.textAlign = "right";
  const step = roundStep(axes.high - axes.low);
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  for (let value = Math.ceil(axes.low / step) * step; value <= axes.high; value += step) {
    const y = Math.round(axes.y(value)) + 0.5;
    pen.beginPath();
    pen.moveTo(LEFT, y);
    pen.lineTo(axes.width - RIGHT, y);
    pen.stroke();
    pen.fillText((Math.abs(value) < step / 2 ? 0 : value).toFixed(places), LEFT - 6, y);
  }
  pen.textAlign = "center";
  pen.textBaseline = "alphabetic";
  const most = Math.max(2, Math.floor((axes.width - LEFT - RIGHT) / 64));
  const days = [1, 2, 7, 14, 28, 56, 112, 224].find(each => axes.days / each <= most) || 365;
  for (let day = 0; day <= axes.days; day += days) {
    const x = axes.x(day);
    pen.textAlign = day === 0 ? "left" : "center";
    if (x < axes.width - RIGHT - 18 || day === 0) {
      pen.fillText(dayMonth(rig, day), x, axes.height - 6);
    }
    pen.beginPath();
    pen.moveTo(x, axes.height - BOTTOM);
    pen.lineTo(x, axes.height - BOTTOM + 4);
    pen.stroke();
  }
}

function drawLine(pen, axes, one, style) {
  pen.strokeStyle = style.colour;
  pen.setLineDash(style.dash);
  pen.lineWidth = style.width;
  pen.beginPath();
  let down = false;
  // No more points than pixels: of each pixel's hours the least and the greatest.
  const perPoint = Math.max(1, Math.floor(one.values.length / Math.max(1, 2 * axes.width)));
  for (let at = 0; at < one.values.length; at += perPoint) {
    const value = one.values[at];
    if (!Number.isFinite(value)) {
      down = false;
      continue;
    }
    const x = axes.x((at + 1) * one.hours / 24);
    const y = axes.y(value);
    down ? pen.lineTo(x, y) : pen.moveTo(x, y);
    down = true;
  }
  pen.stroke();
  pen.setLineDash([]);
}

function drawCrosses(pen, axes, points, colour) {
  pen.strokeStyle = colour;
  pen.lineWidth = 1.8;
  for (const {day, value} of points) {
    const x = axes.x(day);
    const y = axes.y(value);
    pen.beginPath();
    pen.moveTo(x - 4, y - 4);
    pen.lineTo(x + 4, y + 4);
    pen.moveTo(x - 4, y + 4);
    pen.lineTo(x + 4, y - 4);
    pen.stroke();
  }
}

function drawMarks(pen, axes, band, marks, colours) {
  if (band) {
    pen.fillStyle = colours.band;
    pen.fillRect(LEFT, axes.y(band[1]), axes.width - LEFT - RIGHT, axes.y(band[0]) - axes.y(band[1]));
  }
  pen.font = "11px system-ui, sans-serif";
  for (const mark of marks) {
    const y = axes.y(mark.at);
    pen.strokeStyle = colours.quiet;
    pen.setLineDash([10, 4]);
    pen.lineWidth = 1;
    pen.beginPath();
    pen.moveTo(LEFT, y);
    pen.lineTo(axes.width - RIGHT, y);
    pen.stroke();
    pen.setLineDash([]);
    pen.fillStyle = colours.quiet;
    pen.textAlign = "right";
    pen.textBaseline = "bottom";
    pen.fillText(mark.says, axes.width - RIGHT - 2, y - 1);
  }
}

function drawAway(pen, axes, rig, colours) {
  pen.fillStyle = colours.away;
  const days = new Set(rig.visitDays);
  let from = null;
  for (let day = 0; day <= rig.days; day++) {
    if (day < rig.days && !days.has(day)) {
      from = from === null ? day : from;
    } else if (from !== null) {
      if (day - from >= 3) {
        pen.fillRect(axes.x(from), TOP, axes.x(day) - axes.x(from), axes.height - TOP - BOTTOM);
      }
      from = null;
    }
  }
}

function coloursNow() {
  return Object.fromEntries(["ink", "quiet", "grid", "panel", "pin", "band", "away", "deep", "rust", "teal", "plum"]
      .map(name => [name, colourOf("--" + name)]));
}

// Draws one plot of a run, a pinned run behind it on the same axes, and the day looked at.
function drawPlot(canvas, plot, run, pinned, tray, day, colours) {
  const {pen, width, height} = penOf(canvas);
  const told = run.rig.trays[tray];
  const lines = plot.lines(run, tray);
  const behind = pinned ? plot.lines(pinned, tray) : [];
  const band = plot.band && plot.band(told);
  const marks = plot.marks ? plot.marks(told) : [];
  const [low, high] = rangeOf(plot, [...lines, ...behind], band, marks);
  const axes = axesOf(width, height, Math.max(run.rig.days, pinned ? pinned.rig.days : 0), low, high);
  pen.fillStyle = colours.panel;
  pen.fillRect(0, 0, width, height);
  drawAway(pen, axes, run.rig, colours);
  drawMarks(pen, axes, band, marks, colours);
  drawGrid(pen, axes, run.rig, colours);
  behind.forEach(one => drawLine(pen, axes, one, {colour: colours.pin, dash: [3, 3], width: 1.4}));
  [...lines].reverse().forEach(one => drawLine(pen, axes, one, {colour: colours[one.colour.slice(2)], dash: one.dash, width: 1.8}));
  if (day !== null) {
    pen.strokeStyle = colours.ink;
    pen.lineWidth = 1;
    pen.beginPath();
    pen.moveTo(axes.x(day + 0.5), TOP);
    pen.lineTo(axes.x(day + 0.5), height - BOTTOM);
    pen.stroke();
  }
  canvas.axes = axes;
  canvas.setAttribute("aria-label", `${plot.title}: ` + lines.map(one =>
    `${one.says} from ${digits(least(one.values), 1)} to ${digits(greatest(one.values), 1)} ${plot.unit}, `
      + `${digits(one.values[one.values.length - 1], 1)} at the end`).join("; "));
}
