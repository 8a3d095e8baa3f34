// What comes into the page from the desk, and what goes back there.

const MOST_SHOWN = 1 << 20;
const MOST_EDITED = 200000;
const MOST_LINES = 4000;

// Longer or with more lines it would stand still for the blink of an eye or more while it is laid out.
function canBeEdited(words) {
  return words.length <= MOST_EDITED && words.split("\n").length <= MOST_LINES;
}

function keep(name, content) {
  const address = URL.createObjectURL(content);
  const link = made("a", {href: address, download: name});
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10000);
}

function keepText(name, text, type) {
  keep(name, new Blob([text], {type: type + ";charset=utf-8"}));
}

// A scenario is the file that ends in .toml and names a tray; a crop file names none.
function isScenario(name, text) {
  return name.toLowerCase().endsWith(".toml") && /^\s*\[\s*"?'?tray"?'?\s*\./m.test(text.slice(0, MOST_SHOWN));
}

// A crop file has its growth; no scenario has.
function isCrop(text) {
  return /^\s*\[\s*growth\s*\]/m.test(text.slice(0, MOST_SHOWN));
}

// What the command "fit" learned from a log says of each how much doubt is left.
function isCorrections(text) {
  return /^\s*doubt_left\s*=/m.test(text.slice(0, MOST_SHOWN));
}

// The names under which a scenario asks for its files, as far as they end like a file's own.
function nameIn(scenario, file) {
  const quoted = [...scenario.slice(0, MOST_SHOWN).matchAll(/"([^"\n]+)"|'([^'\n]+)'/g)].map(found => found[1] || found[2]);
  return quoted.find(name => name === file || name.endsWith("/" + file)) || file;
}

async function readFiles(list) {
  const files = [];
  for (const file of list) {
    files.push({name: file.name, text: await file.text()});
  }
  return files;
}

// All curves one under the other, with the title and the verdict over them.
function pictureOf(canvases, heads) {
  const ratio = window.devicePixelRatio || 1;
  const width = Math.max(...canvases.map(canvas => canvas.width));
  const lineHeight = 20 * ratio;
  const whole = document.createElement("canvas");
  whole.width = width;
  whole.height = heads.length * lineHeight + canvases.reduce((sum, c) => sum + c.height + lineHeight, 0) + lineHeight / 2;
  const pen = whole.getContext("2d");
  pen.fillStyle = colourOf("--panel");
  pen.fillRect(0, 0, whole.width, whole.height);
  pen.fillStyle = colourOf("--ink");
  pen.font = `${13 * ratio}px system-ui, sans-serif`;
  let y = 0;
  for (const head of heads) {
    y += lineHeight;
    pen.fillText(head, 8 * ratio, y - 5 * ratio, width - 16 * ratio);
  }
  for (const canvas of canvases) {
    y += lineHeight;
    pen.fillStyle = colourOf("--ink");
    pen.fillText(canvas.title0, 8 * ratio, y - 5 * ratio);
    pen.drawImage(canvas, 0, y);
    y += canvas.height;
  }
  return new Promise(done => whole.toBlob(done, "image/png"));
}
