// A question first, a guess drawn on the plot, then the run.

const LESSONS = [
  {id: "rich", head: "A rich feed piles up", scenario: "rich-feed.toml", other: "lean-feed.toml", plot: "ec",
    question: "Six lettuces drink a feed of 1.6 mS/cm. The line shows the EC of their tray. Now they get a leaner"
      + " feed of 1.3 mS/cm. Where does the line run then?",
    answer: "The crop takes nearly all the salt that a feed of 1.3 brings, so the tray stays in its band. Each litre"
      + " drunk brings the salts of the feed; what the crop does not take stays behind.",
    teacher: ["Ask: why does the leaner feed grow the same lettuce? What runs short first if it is leaner still?",
      "At 1.6 mS/cm the tray leaves the green band; at 1.3 no flush is needed.",
      "The command \u201clean\u201d finds the feeds that do."]},
  {id: "meter", head: "A meter does not see what it counts", scenario: "rain.toml", other: "hard-tap.toml", plot: "mass",
    question: "A feed made of rain reads 1.3 mS/cm; the line shows what a lettuce weighs on it. A second feed is made of hard"
      + " tap water and reads 1.3 mS/cm too. Does a lettuce weigh the same on it?",
    answer: "No. Much of the hard water\u2019s 1.3 is its own lime and sodium: there is less room for the recipe, and the crop"
      + " runs out of potassium. No meter shows it before the crop does.",
    teacher: ["Ask: which ions does the EC of tap water come from? Where does the lime on the valve come from?",
      "The two trays read alike on a meter for the first two weeks."]},
  {id: "gap", head: "Water leaves through the gap, its salts stay", scenario: "lid.toml", other: "open-gap.toml", plot: "ec",
    question: "A lid closes the tray; the line shows its EC. Now two fifths of the deck are left open to the air."
      + " Where does the line run then?",
    answer: "Water evaporates through the gap beside what the crop drinks. The salts stay, and the valve lets in feed"
      + " with more of them: the EC climbs where it fell under the lid.",
    teacher: ["Ask: how much salt did the lost litres leave behind? What else does an open gap let in?",
      "Light on the solution grows algae; the model leaves them out."]},
  {id: "flush", head: "A flush takes out what nobody else does", scenario: "no-flush.toml", other: "flush.toml", plot: "ec",
    question: "Nobody ever drains this tray; the line shows its EC. Now somebody drains it and fills it with feed"
      + " whenever it passes the limit. Draw the line.",
    answer: "A flush puts the tray back to the EC of the feed: the line drops at once and climbs again. It also pours"
      + " good feed away.",
    teacher: ["Ask: how many litres of feed went down the drain? Where could they go instead?",
      "Compare with the first lesson: a leaner feed needs no flush at all."]},
  {id: "valve", head: "How low may the valve stand?", scenario: "rich-feed.toml",
    moves: [{knob: "tray.lettuce.valve.setting", to: "2"}], plot: "mass",
    question: "The valve holds this tray at 40 mm; the line shows what a lettuce weighs. Now the valve is set to 20 mm"
      + " from the first day on. What does a lettuce weigh then?",
    answer: "Next to nothing: the roots of these seedlings end above a level of 20 mm, find no water, and the plants are"
      + " lost in the first days. A valve is lowered when the roots have grown, or the seedlings come with longer ones.",
    teacher: ["Ask: how long must a root be to reach the water? See the curve of the level: cups, level, root tips.",
      "A low level leaves more root in moist air, which a grown plant uses; a seedling has no root long enough."]},
  {id: "air", head: "Dry air makes thirsty leaves", scenario: "rich-feed.toml",
    moves: [{knob: "climate.day_humidity", to: "30"}, {knob: "climate.night_humidity", to: "40"}], plot: "drunk",
    question: "At 50 % humidity by day the lettuces drink as the line shows. Now the heating dries the room to 30 %."
      + " How much do they drink a day?",
    answer: "Drier air draws more water through the leaves: the thirst rises with the vapour pressure deficit of the"
      + " air, and the reservoir empties sooner. Growth falls by a few per cent; the salts pile up faster.",
    teacher: ["Ask: what happens to the EC of the tray? (More litres of feed come in, with their salts.)",
      "The relation is that of Penman and Monteith; stomata that close in dry air soften it."]}
];

const GUESSES = 6;

class Lesson {
  constructor(place, texts, run) {
    this.place = place;
    this.texts = texts;
    this.run = run;
    this.begin(LESSONS[0]);
  }

  begin(lesson) {
    this.lesson = lesson;
    this.plot = PLOTS.find(plot => plot.id === lesson.plot);
    this.before = null;
    this.after = null;
    this.guess = null;
    this.build();
    this.ready = this.run({text: this.texts[lesson.scenario], moves: []}).then(run => {
      if (this.lesson === lesson) {
        this.before = run;
        this.guess = this.firstGuess();
        this.show();
      }
    });
  }

  lineOf(run) {
    return this.plot.lines(run, 0)[0];
  }

  // Days at which a guess can be set by keys, and where the guess stands there at first: on the line shown.
  firstGuess() {
    const one = this.lineOf(this.before);
    const days = this.before.rig.days;
    return Array.from({length: days + 1}, (_, day) =>
      one.values[Math.min(one.values.length - 1, Math.max(0, Math.round(day * 24 / one.hours) - 1))]);
  }

  build() {
    const choice = made("select", {id: "lesson-choice", onchange: () => this.begin(LESSONS[Number(choice.value)])},
      ...LESSONS.map((lesson, at) => made("option", {value: at, selected: lesson === this.lesson}, `${at + 1}. ${lesson.head}`)));
    this.canvas = made("canvas", {role: "img", tabindex: "0"});
    this.canvas.addEventListener("pointerdown", event => this.draw(event));
    this.canvas.addEventListener("pointermove", event => event.buttons > 0 && this.draw(event));
    this.handles = made("div", {});
    this.answer = made("div", {role: "status"});
    this.reveal = made("button", {type: "button", disabled: true, onclick: () => this.showAnswer()}, "Run it");
    this.place.replaceChildren(
      made("p", {class: "row"}, made("label", {for: "lesson-choice"}, "Lesson"), choice),
      made("p", {}, this.lesson.question),
      made("p", {class: "quiet"}, "Draw your guess on the plot, or set it day by day with the sliders below; then run it."),
      made("figure", {}, made("figcaption", {}, this.plot.title, " ", made("span", {}, this.plot.unit)), this.canvas),
      this.handles,
      made("p", {class: "row"}, this.reveal, " ",
        made("button", {type: "button", onclick: () => this.begin(this.lesson)}, "Begin again"),
        made("button", {type: "button", onclick: () => this.printed()}, "Print this lesson")),
      this.answer,
      made("details", {}, made("summary", {}, "For the teacher"),
        made("ul", {}, ...this.lesson.teacher.map(note => made("li", {}, note)))));
    this.handlesFor = null;
  }

  buildHandles() {
    this.handlesFor = this.before;
    const days = this.before.rig.days;
    this.handles.replaceChildren(made("details", {}, made("summary", {}, "Set the guess with sliders"),
      ...Array.from({length: GUESSES}, (_, i) => {
        const day = Math.round(days * (i + 1) / GUESSES);
        const input = made("input", {type: "range", id: "guess-" + i, step: "any", oninput: () => this.slide(i, Number(input.value))});
        return made("div", {class: "knob"}, made("label", {for: "guess-" + i}, `day ${day}, ${dayMonth(this.before.rig, day - 1)}`),
          made("output", {for: "guess-" + i}), input);
      })));
  }

  slide(at, value) {
    const days = this.before.rig.days;
    const dayOfGuess = i => Math.round(days * i / GUESSES);
    const from = dayOfGuess(at);
    const mid = dayOfGuess(at + 1);
    const to = dayOfGuess(at + 2);
    const set = (a, b) => {
      const first = this.guess[a];
      const last = this.guess[b];
      for (let day = a; day <= b && b <= days; day++) {
        this.guess[day] = first + (last - first) * (b === a ? 1 : (day - a) / (b - a));
      }
    };
    this.guess[mid] = value;
    set(from, mid);
    set(mid, Math.min(days, to));
    this.touched = true;
    this.show();
  }

  draw(event) {
    if (!this.guess || this.after) {
      return;
    }
    event.preventDefault();
    const box = this.canvas.getBoundingClientRect();
    const day = Math.round(this.axes.day(event.clientX - box.left));
    const value = Math.max(this.axes.low, Math.min(this.axes.high, this.axes.value(event.clientY - box.top)));
    if (day < 0 || day > this.before.rig.days) {
      return;
    }
    const from = event.type === "pointermove" && this.lastDay !== undefined ? this.lastDay : day;
    const begun = this.guess[from];
    for (let at = Math.min(from, day); at <= Math.max(from, day); at++) {
      this.guess[at] = from === day ? value : begun + (value - begun) * (at - from) / (day - from);
    }
    this.lastDay = day;
    this.touched = true;
    this.show();
  }

  show() {
    if (!this.before) {
      return;
    }
    if (this.handlesFor !== this.before) {
      this.buildHandles();
    }
    this.reveal.disabled = this.after !== null;
    const told = this.before.rig.trays[0];
    const {pen, width, height} = penOf(this.canvas);
    const colours = coloursNow();
    const lines = [this.lineOf(this.before), ...(this.after ? [this.lineOf(this.after)] : [])];
    const band = this.plot.band && this.plot.band(told);
    // Room over the line shown, so that the axis gives nothing away.
    const room = {values: [1.7 * greatest(lines[0].values), ...(this.plot.zero ? [] : [4, 9])]};
    const [low, high] = rangeOf(this.plot, [...lines, room], band, []);
    const axes = this.axes = axesOf(width, height, this.before.rig.days, low, this.plot.zero ? high : Math.min(high, 9));
    pen.fillStyle = colours.panel;
    pen.fillRect(0, 0, width, height);
    drawMarks(pen, axes, band, [], colours);
    drawGrid(pen, axes, this.before.rig, colours);
    drawLine(pen, axes, lines[0], {colour: colours.deep, dash: [], width: 1.8});
    drawLine(pen, axes, {values: this.guess.slice(1), hours: 24}, {colour: colours.pin, dash: [5, 4], width: 2.4});
    if (this.after) {
      drawLine(pen, axes, lines[1], {colour: colours.rust, dash: [9, 3], width: 2.2});
    }
    this.showHandles(low, axes.high);
    this.canvas.setAttribute("aria-label", `${this.plot.title}: the line shown, dashed your guess`
      + (this.after ? ", in long dashes the run" : ""));
  }

  showHandles(low, high) {
    const days = this.before.rig.days;
    for (let i = 0; i < GUESSES; i++) {
      const input = this.handles.querySelector("#guess-" + i);
      const value = this.guess[Math.round(days * (i + 1) / GUESSES)];
      input.min = low;
      input.max = high;
      input.value = value;
      input.disabled = this.after !== null;
      const words = digits(value, high > 50 ? 0 : 1) + " " + this.plot.unit;
      input.setAttribute("aria-valuetext", words);
      input.parentElement.querySelector("output").textContent = words;
    }
  }

  async showAnswer() {
    const lesson = this.lesson;
    this.reveal.disabled = true;
    this.answer.replaceChildren(made("p", {}, "Running\u2026"));
    const after = await this.run({text: this.texts[lesson.other || lesson.scenario], moves: lesson.moves || []});
    if (this.lesson !== lesson) {
      return;
    }
    this.after = after;
    this.show();
    const end = one => one.values[one.values.length - 1];
    const places = this.plot.id === "mass" ? 0 : 2;
    const say = value => `${digits(value, places)} ${this.plot.unit}`.trim();
    this.answer.replaceChildren(
      made("p", {}, made("strong", {}, `At the end: ${say(end(this.lineOf(this.before)))} as shown, `
        + `${say(end(this.lineOf(after)))} in the second run`
        + (this.touched ? `, ${say(this.guess[this.guess.length - 1])} by your guess.` : "; you made no guess."))),
      made("p", {}, lesson.answer));
  }

  printed() {
    document.body.classList.add("printing-lesson");
    window.print();
    document.body.classList.remove("printing-lesson");
  }
}
