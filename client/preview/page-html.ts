// The page's markup: fixed words only, under a policy that lets nothing in but the page's own script, style and font.

export interface PageParts {
  readonly script: string;
  readonly style: string;
  /** Where the editor serves the page's files from, as the policy names it. */
  readonly source: string;
  /** New for every page. */
  readonly nonce: string;
}

export function pageHtml({ script, style, source, nonce }: PageParts): string {
  const policy = [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src ${source}`,
    "img-src data: blob:",
    `font-src ${source}`,
  ].join("; ");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Flow curve</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main id="page">
<header id="bar">
<div id="head">
<h1 id="name"></h1>
<div id="zoom" role="group" aria-label="Part of the lift axis" hidden>
<button type="button" id="zoom-all" aria-keyshortcuts="0" title="0">Whole curve</button>
<button type="button" id="zoom-out" aria-keyshortcuts="-" title="−">Wider</button>
<button type="button" id="zoom-in" aria-keyshortcuts="+" title="+, or draw across the curve">Closer</button>
</div>
</div>
<select id="picker" aria-label="Runs shown" hidden></select>
<button type="button" id="more" aria-expanded="false" aria-controls="choices">Axes</button>
<div id="choices" role="group" aria-label="Axes and units">
<select id="axis" aria-label="Lift, or lift over valve diameter">
<option value="lift">over lift</option>
<option value="lift-ratio">over L/D</option>
</select>
<select id="cd" aria-label="Discharge coefficient set on">
<option value="curtain">Cd on curtain</option>
<option value="gap">Cd on gap</option>
<option value="throat">Cd on throat</option>
<option value="head">Cd on valve head</option>
</select>
<span id="units"></span>
<button type="button" id="reset">Reset</button>
</div>
<button type="button" id="pin" aria-pressed="false">Pin</button>
</header>
<p id="problem" hidden></p>
<section id="summary" aria-label="Summary"></section>
<section id="findings-part" aria-labelledby="findings-head"><h2 id="findings-head">Findings</h2><div id="findings"></div></section>
<dl id="facts" aria-label="What the numbers stand on"></dl>
<section id="results" aria-label="Results">
<button type="button" id="all-columns" aria-pressed="false" hidden>All columns</button>
<div id="tables"></div>
</section>
<section id="picture" aria-label="Picture" tabindex="-1">
<div id="drawing"></div>
</section>
<footer id="save">
<span class="quiet">Save as</span>
<button type="button" id="save-svg">SVG</button>
<button type="button" id="save-png">PNG</button>
<button type="button" id="save-csv">CSV</button>
<button type="button" id="save-vega-lite">Vega-Lite</button>
<button type="button" id="copy">Copy as Markdown table</button>
</footer>
<p id="live" class="unseen" role="status" aria-live="polite"></p>
</main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>
`;
}
