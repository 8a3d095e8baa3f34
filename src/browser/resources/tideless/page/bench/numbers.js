// Numbers and dates as the command line writes them.

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const DAY_S = 86400;

function dateOf(rig, day) {
  return new Date(Date.parse(rig.start + "T00:00:00Z") + day * DAY_S * 1000);
}

function weekday(rig, day) {
  const date = dateOf(rig, day);
  return `${WEEKDAYS[date.getUTCDay()]} ${dayMonth(rig, day)}`;
}

function dayMonth(rig, day) {
  const date = dateOf(rig, day);
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
}

// To so many digits behind the point, or a dash where there is nothing to read.
function digits(value, places) {
  return Number.isFinite(value) ? value.toFixed(places) : "\u2013";
}

// A round step that parts a span into some four to eight.
function roundStep(span) {
  const power = 10 ** Math.floor(Math.log10(span / 4));
  return [1, 2, 5, 10].map(times => times * power).find(step => span / step <= 6) || 10 * power;
}

function greatest(values) {
  let most = -Infinity;
  for (const value of values) {
    if (value > most) {
      most = value;
    }
  }
  return most;
}

function least(values) {
  let low = Infinity;
  for (const value of values) {
    if (value < low) {
      low = value;
    }
  }
  return low;
}

// Sums of 24 hours, one a day.
function daily(hourly) {
  const sums = new Float64Array(Math.floor(hourly.length / 24));
  sums.forEach((_, day) => {
    for (let hour = 24 * day; hour < 24 * day + 24; hour++) {
      sums[day] += hourly[hour];
    }
  });
  return sums;
}

// An element with attributes, and texts or elements in it.
function made(name, attributes = {}, ...inside) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) {
      element.addEventListener(key.slice(2), value);
    } else if (value !== false && value !== undefined) {
      element.setAttribute(key, value === true ? "" : value);
    }
  }
  element.append(...inside);
  return element;
}
