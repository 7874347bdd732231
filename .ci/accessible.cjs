// Looks at HTML files as a browser shows them, light and dark, wide and narrow,
// and fails where the accessibility checker finds something serious:
//
//   node accessible.cjs MODULES BROWSER FILE...
//
// MODULES is the node_modules folder with axe-core and puppeteer-core in it.
const path = require("path");
const [modules, browserPath, ...files] = process.argv.slice(2);
const from = require("module").createRequire(path.join(path.resolve(modules), "..", "x.js"));
const puppeteer = from("puppeteer-core");
const checker = require("fs").readFileSync(from.resolve("axe-core/axe.min.js"), "utf8");

(async () => {
  const browser = await puppeteer.launch({ executablePath: browserPath, args: ["--no-sandbox", "--disable-gpu"] });
  let serious = 0, passed = 0;
  for (const file of files)
    for (const scheme of ["light", "dark"])
      for (const width of [360, 1280]) {
        const page = await browser.newPage();
        await page.setViewport({ width, height: 900 });
        await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
        await page.goto("file://" + path.resolve(file));
        await page.evaluate(() => document.querySelectorAll("details").forEach((d) => (d.open = true)));
        await page.evaluate(checker);
        const found = await page.evaluate(() => axe.run(document));
        passed += found.passes.length;
        for (const v of found.violations) {
          console.log(`${path.basename(file)}, ${scheme}, ${width}: ${v.impact}: ${v.help} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 120)}`);
          if (v.impact === "serious" || v.impact === "critical") serious++;
        }
        await page.close();
      }
  await browser.close();
  console.log(`${passed} rules kept, ${serious} seriously broken`);
  process.exit(serious > 0 || passed === 0 ? 1 : 0);
})().catch((err) => { console.log(String(err)); process.exit(1); });
