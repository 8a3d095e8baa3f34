// The rig at an hour of the season, drawn by the engine as it draws the pictures of a report.

class Section {
  // A picture under way is handed to busy, which says so where it takes long.
  constructor(place, {busy, failed}) {
    Object.assign(this, {place, busy, failed});
    this.wanted = null;
    this.asking = null;
  }

  // Asks for one picture at a time; of those wanted meanwhile the last one follows.
  show(engine, run, tray, hour) {
    this.wanted = {engine, given: {text: run.text, stepS: run.stepS || run.rig.stepS, tray, hour}};
    if (!this.asking) {
      this.asking = this.next().finally(() => {
        this.asking = null;
      });
    }
  }

  async next() {
    while (this.wanted) {
      const {engine, given} = this.wanted;
      this.wanted = null;
      try {
        this.lay(await this.busy(engine.call("drawing", given)));
      } catch (fault) {
        this.failed(fault);
      }
    }
  }

  lay(svg) {
    if (svg) {
      const picture = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
      this.place.replaceChildren(document.importNode(picture, true));
    }
  }
}
