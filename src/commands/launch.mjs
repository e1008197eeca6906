/**
 * Starts a command of this project once Node and its packages are there: `node launch.mjs start`. Plain
 * JavaScript without anything new, so that an old Node reads far enough to say that it is old.
 */
const [name] = process.argv.splice(2, 1);
const needed = 20;

function refuse(sentence) {
  console.error(sentence);
  process.exit(1);
}

if (Number(process.versions.node.split(".")[0]) < needed)
  refuse(`This is Node.js ${process.versions.node}. Dosewright needs ${needed} or later.`);

// From here on TypeScript is understood.
await import("tsx").catch(() => refuse("The packages are not installed yet. Run npm ci first."));
await import(`./${name}.ts`);
