import { type Html, html } from "./html";

/** A whole page of help: it needs no script, and asks nothing of any other machine. */
export function frame(title: string, main: Html): string {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title}</title>
<link rel="stylesheet" href="help.css">
</head>
<body>
<header><a href="index.html">Dosewright functions</a></header>
<main>
${main}
</main>
<footer><p>Dosewright computes, the site decides: the supplier’s safety data sheet, the site’s rules and local law come first, and licensed people do licensed work.</p></footer>
</body>
</html>
`.markup;
}
