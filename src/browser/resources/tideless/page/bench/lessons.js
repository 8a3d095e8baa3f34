// A question first, a guess drawn on the plot, then the run.

// What a lesson shows: a season, or its first days; then another, or the rest. "own" is the rig in the page.
const LESSONS = [
  {id: "salts", head: "Where the salts go", scenario: "rich-feed.toml", other: "lean-feed.toml", plot: "ec",
    question: "Six lettuces drink a feed of 1.6 mS/cm. The line shows the EC of their tray, the green band what lettuce is"
      + " best given. Now they get a leaner feed of 1.3 mS/cm. Where does the line run then?",
    answer: "Each litre drunk brings the salts of the feed; what the crop does not take stays in the tray. It takes nearly all"
      + " that a feed of 1.3 brings, so the tray stays in its band; of 1.6 a part is left over every day.",
    teacher: ["Ask: where are the salts that the line shows? Which way do they leave a tray that nobody drains?",
      "Water leaves through the leaves and through gaps; salts leave with the harvest or down the drain.",
      "Why does the leaner feed grow the same lettuce? What runs short first if it is leaner still?",
      "The command \u201clean\u201d finds the feeds that need no flush."]},
  {id: "valve", head: "Why valve height matters", scenario: "rich-feed.toml",
    moves: [{knob: "tray.lettuce.valve.setting", to: "2"}], plot: "mass",
    question: "The valve holds this tray at 40 mm, 5 mm above the underside of the cups; the line shows what a lettuce weighs."
      + " Now the valve is set to 20 mm from the first day on. What does a lettuce weigh then?",
    answer: "Next to nothing: the roots of these seedlings end above a level of 20 mm, the water in their plugs is gone after"
      + " two days, and the plants are lost. A valve is lowered when the roots have grown, or the seedlings come with longer ones.",
    teacher: ["Ask: how long must a root be to reach the water? See the curve of the level: cups, level, root tips.",
      "A low level leaves more root in moist air, which a grown plant uses; a seedling has no root long enough.",
      "Move \u201cvalve shuts at\u201d above and watch root tips and level."]},
  {id: "outgrow", head: "Why tomatoes outgrow", scenario: "outgrown-trough.toml", days: 42, until: 14, plot: "drunk", tells: "most",
    question: "Four tomatoes stand in a trough under a reservoir of 24 L, filled up every Monday. The line shows what they"
      + " drink a day in the first two weeks. Draw the four weeks that follow.",
    answer: "They grow, and with their leaves their thirst: 2 L a day after a week, 4 after two, 6 after three. What lasted"
      + " two weeks at first is gone in less than four days. The line breaks off where the trough is dry and the plants are lost.",
    teacher: ["Ask: on which day do seven days of thirst pass 24 L? What would have been enough?",
      "The verdict of this rig names the reservoir that would do; load it into the page and move the litres.",
      "A lettuce is cut before it outgrows anything; a fruiting plant goes on growing for months."]},
  {id: "water", head: "Rain or tap", scenario: "rain.toml", other: "hard-tap.toml", plot: "mass",
    question: "A feed made of rain reads 1.3 mS/cm; the line shows what a lettuce weighs on it. A second feed is made of hard"
      + " tap water and reads 1.3 mS/cm too. Does a lettuce weigh the same on it?",
    answer: "No. Much of the hard water\u2019s 1.3 is its own lime and sodium: there is less room for the recipe, and the crop"
      + " runs out of potassium. No meter shows it before the crop does.",
    teacher: ["Ask: which ions does the EC of tap water come from? Where does the lime on the valve come from?",
      "The two trays read alike on a meter for the first two weeks.",
      "Which water do you have? The supplier\u2019s analysis tells; a scenario takes it."]},
  {id: "away", head: "Away for a week", scenario: "science-room-bench.toml", moves0: [{knob: "visits.away.length", to: "0"}],
    moves: [], plot: "reservoir", tells: "least",
    question: "Three trays hang on one shelf reservoir; on school days somebody looks and fills it up when it is low. The line"
      + " shows the litres left above its outlet. Now nobody comes from 3 to 12 April: a week of holidays with its weekends."
      + " Draw the litres left.",
    answer: "The trays go on drinking 2.2 L a day. Whoever leaves on the day before with 16 L finds the reservoir empty and the"
      + " trays falling; filled up on that day it would have lasted. Nothing was low when they left: that is what a forecast is for.",
    teacher: ["Ask: how many litres must be added on 2 April? (See the tasks of the bench: it is advised there.)",
      "How many days may the class be away in March, how many in May? The command \u201caway\u201d draws it.",
      "What do the roots live on once the trays fall? See the level and the root tips."]},
  {id: "own", head: "Build, predict, measure", own: true, until: 1, measures: true,
    question: "This is the rig that stands in the page above: set it up as the one you have built (its sizes, its crop, your"
      + " visits), then come back. Draw what you expect, run it, and enter below what you measure through the weeks.",
    answer: "Where your readings leave the line, ask which of the page\u2019s numbers is not yours: lamp, air, leaves, a gap in the"
      + " deck. A calculation is right about the rig that it was told of.",
    teacher: ["Build it on a bench that bears the weight; no mains lead near the water without a residual-current device and a"
      + " drip loop; gloves and goggles for acid and concentrate.",
      "A ruler against the wall of the tray reads the level to a millimetre; litres in a reservoir follow from its level.",
      "With a log of readings the command \u201cfit\u201d finds out which numbers differ."]}
];

const GUESSES = 6;
const READINGS = 6;

class Lesson {
  // The rig in the page is asked for when a lesson needs it; load puts a scenario there.
  constructor(place, texts, {run, own, load}) {
    Object.assign(this, {place, texts, run, own, load});
    this.begin(LESSONS[0]);
  }

  begin(lesson) {
    this.lesson = lesson;
    this.tray = lesson.own ? this.own().tray : 0;
    this.before = null;
    this.after = null;
    this.guess = null;
    this.touched = false;
    this.lastDay = undefined;
    this.readings = [];
    this.plot = PLOTS.find(plot => plot.id === (lesson.plot || this.plotOfOwn()));
    const hadKeys = document.activeElement === inPage("lesson-choice");
    this.build();
    if (hadKeys) {
      inPage("lesson-choice").focus();
    }
    this.ready = this.season(lesson.scenario, lesson.moves0).then(run => {
      if (this.lesson === lesson && !this.before) {
        this.before = run;
        this.days = Math.min(lesson.days || run.rig.days, run.rig.days);
        this.guess = this.firstGuess();
        this.show();
      }
    });
  }

  // A tray on a reservoir is held; what is told there is the reservoir.
  plotOfOwn() {
    return this.own().rig.trays[this.tray].reservoir === undefined ? "level" : "reservoir";
  }

  season(scenario, moves = []) {
    return this.run({text: this.lesson.own ? this.own().text : this.texts[scenario], moves});
  }

  // Without what is said of it in the plot's head.
  unit() {
    return this.plot.unit.split(" ")[0];
  }

  lineOf(run) {
    const one = this.plot.lines(run, this.tray)[0];
    return {...one, values: one.values.subarray(0, this.days * 24 / one.hours)};
  }

  // What is shown before the guess: all of it, or the first days.
  shownLine() {
    const one = this.lineOf(this.before);
    return this.lesson.until ? {...one, values: one.values.subarray(0, this.lesson.until * 24 / one.hours)} : one;
  }

  // A value for each day; at first on the line shown, and from its end on level.
  firstGuess() {
    const one = this.shownLine();
    return Array.from({length: this.days + 1}, (_, day) =>
      one.values[Math.min(one.values.length - 1, Math.max(0, Math.round(day * 24 / one.hours) - 1))]);
  }

  build() {
    const choice = made("select", {id: "lesson-choice", onchange: () => this.begin(LESSONS[Number(choice.value)])},
      ...LESSONS.map((lesson, at) => made("option", {value: at, selected: lesson === this.lesson}, `${at + 1}. ${lesson.head}`)));
    this.key = made("span", {}, this.plot.unit);
    this.canvas = made("canvas", {role: "img"});
    this.canvas.addEventListener("pointerdown", event => this.draw(event));
    this.canvas.addEventListener("pointermove", event => event.buttons > 0 && this.draw(event));
    this.handles = made("div", {class: "handles"});
    this.answer = made("div", {role: "status"});
    this.reveal = made("button", {type: "button", disabled: true, onclick: () => this.asked()}, "Run it");
    this.place.replaceChildren(
      made("p", {class: "row"}, made("label", {for: "lesson-choice"}, "Lesson"), choice),
      made("h3", {}, this.lesson.head),
      made("p", {}, this.lesson.question),
      made("p", {class: "quiet"}, "Draw your guess on the plot, or set it day by day with the sliders below; then run it."),
      made("figure", {}, made("figcaption", {}, this.plot.title, " ", this.key), this.canvas),
      this.handles,
      made("p", {class: "row"}, this.reveal, " ",
        made("button", {type: "button", onclick: () => this.begin(this.lesson)}, "Begin again"),
        made("button", {type: "button", onclick: () => this.printed()}, "Print this lesson"),
        ...(this.lesson.own ? [] : [made("button", {type: "button", onclick: () => this.loaded()}, "Load this rig into the page")])),
      this.answer,
      ...(this.lesson.measures ? [this.buildReadings()] : []),
      made("details", {}, made("summary", {}, "For the teacher"),
        made("ul", {}, ...this.lesson.teacher.map(note => made("li", {}, note)))));
    this.handlesFor = null;
  }

  buildHandles() {
    this.handlesFor = this.before;
    this.handles.replaceChildren(made("details", {}, made("summary", {}, "Set the guess with sliders"),
      ...Array.from({length: GUESSES}, (_, i) => {
        const day = this.dayOfGuess(i + 1);
        const input = made("input", {type: "range", id: "guess-" + i, step: "any", oninput: () => this.slide(i, Number(input.value))});
        return made("div", {class: "knob"}, made("label", {for: "guess-" + i}, `day ${day}, ${dayMonth(this.before.rig, day - 1)}`),
          made("output", {for: "guess-" + i}), input);
      })));
  }

  // From the end of what is shown to the last day.
  dayOfGuess(i) {
    const from = this.lesson.until || 0;
    return from + Math.round((this.days - from) * i / GUESSES);
  }

  slide(at, value) {
    const days = this.days;
    const from = this.dayOfGuess(at);
    const mid = this.dayOfGuess(at + 1);
    const to = this.dayOfGuess(at + 2);
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
    this.guessed();
  }

  draw(event) {
    if (!this.guess || this.after) {
      return;
    }
    event.preventDefault();
    const box = this.canvas.getBoundingClientRect();
    const day = Math.round(this.axes.day(event.clientX - box.left));
    const value = Math.max(this.axes.low, Math.min(this.axes.high, this.axes.value(event.clientY - box.top)));
    if (day < 0 || day > this.days || day < (this.lesson.until || 0)) {
      return;
    }
    const from = event.type === "pointermove" && this.lastDay !== undefined ? this.lastDay : day;
    const begun = this.guess[from];
    for (let at = Math.min(from, day); at <= Math.max(from, day); at++) {
      this.guess[at] = from === day ? value : begun + (value - begun) * (at - from) / (day - from);
    }
    this.lastDay = day;
    this.guessed();
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
    const lines = [this.shownLine(), ...(this.after ? [this.lineOf(this.after)] : [])];
    const band = this.plot.band && this.plot.band(told);
    // Room over the line shown, so that the axis gives nothing away.
    const room = {values: [(this.lesson.until ? 2.5 : 1.7) * greatest(lines[0].values), ...(this.plot.zero ? [] : [4, 9]),
      ...this.readings.map(one => one.value)]};
    const [low, high] = rangeOf(this.plot, [...lines, room], band, []);
    const axes = this.axes = axesOf(width, height, this.days, low, this.plot.zero ? high : Math.min(high, 9));
    pen.fillStyle = colours.panel;
    pen.fillRect(0, 0, width, height);
    drawMarks(pen, axes, band, [], colours);
    drawGrid(pen, axes, this.before.rig, colours);
    drawLine(pen, axes, lines[0], {colour: colours.deep, dash: [], width: 1.8});
    const from = this.lesson.until || 0;
    if (this.touched) {
      drawLine(pen, axes, {values: this.guess.slice(1).map((value, day) => day + 1 < from ? NaN : value), hours: 24},
        {colour: colours.pin, dash: [5, 4], width: 2.4});
    }
    if (this.after) {
      drawLine(pen, axes, lines[1], {colour: colours.rust, dash: [9, 3], width: 2.2});
    }
    drawCrosses(pen, axes, this.readings, colours.ink);
    this.showHandles(low, axes.high);
    this.key.textContent = `${this.plot.unit}; the line shown${this.touched ? "; dashed your guess" : ""}`
      + (this.after ? "; in long dashes the run" : "") + (this.readings.length > 0 ? "; crosses your readings" : "");
    this.canvas.setAttribute("aria-label", `${this.plot.title}, ${this.key.textContent}`);
  }

  showHandles(low, high) {
    for (let i = 0; i < GUESSES; i++) {
      const input = this.handles.querySelector("#guess-" + i);
      const value = this.guess[this.dayOfGuess(i + 1)];
      input.min = low;
      input.max = high;
      input.value = value;
      input.disabled = this.after !== null;
      const words = digits(value, high > 50 ? 0 : 1) + " " + this.unit();
      input.setAttribute("aria-valuetext", words);
      input.parentElement.querySelector("output").textContent = words;
    }
  }

  // The guess comes first; who has none says so.
  asked() {
    if (this.touched) {
      return this.showAnswer();
    }
    this.answer.replaceChildren(made("div", {class: "ask"},
      made("p", {}, "The guess comes first: draw it on the plot, or unfold \u201cSet the guess with sliders\u201d; then run it."),
      made("p", {}, made("button", {type: "button", onclick: () => this.showAnswer()}, "Run it without a guess"))));
    return null;
  }

  // Asked no more once there is a guess.
  guessed() {
    this.touched = true;
    this.place.querySelectorAll(".ask").forEach(ask => ask.remove());
    this.show();
  }

  async showAnswer() {
    const lesson = this.lesson;
    this.reveal.disabled = true;
    this.answer.replaceChildren(made("p", {}, "Running\u2026"));
    const after = lesson.until ? this.before : await this.season(lesson.other || lesson.scenario, lesson.moves);
    if (this.lesson !== lesson) {
      return;
    }
    this.after = after;
    this.show();
    const [at, of] = {most: ["At its highest", greatest], least: ["At its lowest", least]}[lesson.tells]
      || ["At the end", one => one[one.length - 1]];
    const say = values => `${digits(of(values), this.plot.id === "mass" ? 0 : this.plot.id === "ec" ? 2 : 1)} ${this.unit()}`.trim();
    this.answer.replaceChildren(
      made("p", {}, made("strong", {}, `${at}: ` + (lesson.until ? "" : `${say(this.lineOf(this.before).values)} as shown, `)
        + `${say(this.lineOf(after).values)} in the ${lesson.until ? "" : "second "}run`
        + (this.touched ? `, ${say(this.guess)} by your guess.` : "; you made no guess."))),
      made("p", {}, lesson.answer));
    this.showReadings();
  }

  // Measuring.

  buildReadings() {
    const rows = Array.from({length: READINGS}, (_, i) => {
      const day = made("input", {type: "number", id: `day-${i}`, min: 1, max: 400, step: 1, inputmode: "numeric", oninput: () => this.read()});
      const value = made("input", {type: "number", id: `value-${i}`, min: 0, step: "any", inputmode: "decimal", oninput: () => this.read()});
      return made("p", {class: "row reading"}, made("label", {for: `day-${i}`}, "day"), day,
        made("label", {for: `value-${i}`}, this.plot.unit), value);
    });
    this.distance = made("p", {role: "status"});
    return made("details", {class: "readings"}, made("summary", {}, "What you measured"), ...rows, this.distance);
  }

  read() {
    const number = id => inPage(id).value === "" ? NaN : Number(inPage(id).value);
    this.readings = Array.from({length: READINGS}, (_, i) => ({day: number(`day-${i}`), value: number(`value-${i}`)}))
        .filter(one => one.day >= 1 && one.day <= this.days && one.value >= 0);
    this.show();
    this.showReadings();
  }

  // How far the run lies from what was read; nothing before it was run.
  showReadings() {
    if (this.readings.length === 0 || !this.after) {
      return;
    }
    const one = this.lineOf(this.after);
    const apart = this.readings.map(({day, value}) => value - one.values[Math.round(day * 24 / one.hours) - 1]);
    const mean = apart.reduce((sum, each) => sum + each, 0) / apart.length;
    const most = apart.reduce((far, each) => Math.abs(each) > Math.abs(far) ? each : far, 0);
    const lies = value => `${digits(Math.abs(value), 1)} ${this.unit()} ${value < 0 ? "below" : "above"} the run`;
    this.distance.textContent = `${apart.length} reading${apart.length > 1 ? "s" : ""}: on average ${lies(mean)}, at most ${lies(most)}.`;
  }

  async loaded() {
    await this.load(this.texts[this.lesson.scenario], this.lesson.scenario, this.lesson.moves0);
  }

  printed() {
    document.body.classList.add("printing-lesson");
    addEventListener("afterprint", () => document.body.classList.remove("printing-lesson"), {once: true});
    window.print();
  }
}
