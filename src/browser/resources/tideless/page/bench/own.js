// The text box. What stands in it is the scenario shown, or somebody's own words: a draft, which nothing takes away but
// its own run or the hand that presses for it.

class OwnText {
  // shown gives the scenario shown: text, name, and what is laid beside it; aside is told when a text with faults goes.
  constructor(shown, aside) {
    Object.assign(this, {shown, aside});
    this.laid = ""; // into the box by the page
    this.draft = null; // {text}, and once it was tried and cannot run {tried, faults, name, files, beside} too
    this.kept = null; // the draft that stood here before
    this.isPasted = false; // and is not yet a draft
    inPage("text").addEventListener("input", () => this.show());
    inPage("text").addEventListener("paste", () => this.pasted());
    inPage("text-shown").addEventListener("click", () => this.swap(null));
    inPage("text-kept").addEventListener("click", () => this.swap(this.kept));
  }

  // A text box has one kind of line's end.
  static inBox(words) {
    return words.replace(/\r\n?/g, "\n");
  }

  text() {
    return this.draft ? this.draft.text : this.shown().text;
  }

  // Whatever came into the box otherwise than by the page is somebody's own.
  look() {
    const box = inPage("text");
    if (!box.disabled && box.value !== this.laid) {
      const isPasted = this.isPasted || Boolean(this.draft && this.draft.isPasted);
      this.draft = box.value === OwnText.inBox(this.shown().text) ? null : {...this.draft, text: box.value, isPasted};
      this.laid = box.value;
      this.isPasted = false;
    }
  }

  // Over all that stood there.
  pasted() {
    const {selectionStart, selectionEnd, value} = inPage("text");
    this.isPasted = selectionStart === 0 && selectionEnd === value.length;
  }

  // A text pasted over another, or with another title, is a file of its own and is called by its title.
  name() {
    if (!this.draft) {
      return this.shown().name;
    }
    const before = this.isTried() ? {text: this.draft.tried, name: this.draft.name} : this.shown();
    const title = titleIn(this.draft.text);
    return this.draft.isPasted || title !== titleIn(before.text) ? fileOf(title) : before.name;
  }

  // Whether it cannot run as it stood last.
  isTried() {
    return this.draft !== null && this.draft.tried !== undefined;
  }

  /** What is laid beside it. */
  beside() {
    const {files, beside} = this.shown();
    return this.isTried() ? {files: {...files, ...this.draft.files}, beside: this.draft.beside} : {files, beside};
  }

  /** Keeps a text that cannot run, with what was laid beside it; the draft was another when it was tried, maybe. */
  cannot(text, laid, faults, was) {
    if (this.draft === was) {
      this.keep(text);
    }
    this.draft = {text: this.draft && this.draft !== was ? this.draft.text : text, tried: text, faults, ...laid};
    this.isPasted = false;
    this.show();
  }

  /** A text runs. A draft that was it or another makes room for it, one typed since stands. */
  runs(text, was) {
    if (this.draft === was) {
      this.keep(text);
      this.draft = null;
      this.isPasted = false;
    }
    this.show();
  }

  keep(other) {
    if (this.draft && OwnText.inBox(this.draft.text) !== OwnText.inBox(other)) {
      this.kept = this.draft;
    }
  }

  swap(draft) {
    if (this.isTried()) {
      this.aside();
    }
    this.kept = this.draft;
    this.draft = draft;
    this.show();
  }

  // A text of a book's length would stop the page while it is laid out: it is run and saved, and not shown.
  show() {
    this.look();
    const words = this.text();
    const box = inPage("text");
    const canBe = canBeEdited(words);
    const shown = canBe ? OwnText.inBox(words) : "";
    if (box.value !== shown) {
      box.value = shown;
    }
    this.laid = shown;
    box.disabled = !canBe;
    inPage("run-text").disabled = !canBe;
    inPage("text-shown").hidden = !this.draft;
    inPage("text-kept").hidden = !this.kept;
    inPage("save-text").textContent = this.draft ? "Save this text" : "Save the scenario";
    showFaults(inPage("text-faults"), this.isTried() ? this.draft.faults : [], this.isTried() ? `${this.draft.name} cannot run:` : "");
    const said = canBe ? this.draft ? "What stands here is not the rig shown above until it is run." : ""
      : `This scenario has ${Math.round(words.length / 1000)} kB in ${words.split("\n").length} lines, too much to be edited here. `
        + (this.draft ? "It can be saved all the same." : "It can be run, moved and saved all the same.");
    inPage("text-said").hidden = said === "";
    if (inPage("text-said").textContent !== said) {
      inPage("text-said").textContent = said;
    }
  }
}

// As far as it stands in quotes on a line of its own.
function titleIn(scenario) {
  const [, double, single] = /^[ \t]*title[ \t]*=[ \t]*(?:"([^"\n]*)"|'([^'\n]*)')/m.exec(scenario.slice(0, MOST_SHOWN)) || [];
  return double || single || "";
}

// As "my-bench.toml".
function fileOf(title) {
  return (title.slice(0, 60).toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "pasted") + ".toml";
}
