// Tries pages by an accessibility engine, light and dark, at phone and desktop width, and counts the sheets they print on.
// node check.mjs [--pictures DIR] PAGE.html ...   The browser is CHROME, or chromium. Ends with 1 where something is found.
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import puppeteer from "puppeteer-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const words = process.argv.slice(2);
const folder = words[0] === "--pictures" ? words.splice(0, 2)[1] : null;
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const sizes = { phone: [375, 812], desktop: [1180, 900] };
const browser = await puppeteer.launch({
  executablePath: process.env.CHROME ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
let found = 0;
const page = await browser.newPage();
page.on("request", (request) => {
  if (!/^(file|data):/.test(request.url())) {
    found++;
    console.log(`asks the network for ${request.url()}`);
  }
});
for (const file of words) {
  const name = path.basename(path.dirname(path.resolve(file)));
  for (const [size, [width, height]] of Object.entries(sizes)) {
    for (const scheme of ["light", "dark"]) {
      await page.setViewport({ width, height, deviceScaleFactor: 1 });
      await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
      await page.goto(`file://${path.resolve(file)}`);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      if (wide > 0) {
        found++;
        console.log(`${name}, ${size}: ${wide} px wider than the screen`);
      }
      await page.evaluate(() => document.querySelectorAll("details").forEach((d) => (d.open = true)));
      await page.evaluate(axe);
      const result = await page.evaluate((of) => window.axe.run(document, { runOnly: of }), tags);
      for (const one of result.violations) {
        found += one.nodes.length;
        console.log(`${name}, ${size}, ${scheme}: ${one.id}: ${one.help}`);
        one.nodes.slice(0, 5).forEach((node) => console.log(`  ${node.target} ${node.failureSummary}`));
      }
      if (result.passes.length < 15) {
        found++;
        console.log(`${name}: only ${result.passes.length} rules had something to look at`);
      }
      if (folder) {
        mkdirSync(folder, { recursive: true });
        await page.goto(`file://${path.resolve(file)}`);
        await page.screenshot({ path: path.join(folder, `${name}-${size}-${scheme}.png`) });
      }
    }
  }
  for (const format of ["A4", "Letter"]) {
    await page.goto(`file://${path.resolve(file)}`);
    const pdf = Buffer.from(await page.pdf({ format, preferCSSPageSize: false })).toString("latin1");
    const sheets = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length;
    console.log(`${name}: ${sheets} sheets of ${format}`);
  }
  if (folder) {
    await page.emulateMediaType("print");
    await page.setViewport({ width: 703, height: 1000 }); // A4 without its margins, at 96 to the inch
    await page.goto(`file://${path.resolve(file)}`);
    await page.screenshot({ path: path.join(folder, `${name}-print.png`) });
    await page.emulateMediaType(null);
  }
}
await browser.close();
console.log(found ? `${found} found` : "nothing found");
process.exit(found ? 1 : 0);
