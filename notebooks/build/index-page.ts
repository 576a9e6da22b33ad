import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Lesson } from "./way.ts";

/**
 * The page that lists the notebooks: the notebooks' own template and styles without any script.
 * @param folder Where template and styles are.
 */
export async function indexPage(lessons: readonly Lesson[], folder: string): Promise<string> {
  const template = await readFile(join(folder, "template.html"), "utf8");
  const styles = await readFile(join(folder, "page.css"), "utf8");
  return template
    .replace(/@import url\("[^"]*"\);/, () => styles)
    .replace("<title>: a Moltline notebook</title>", "<title>Moltline notebooks</title>")
    .replace(/script-src [^;]*;/, "script-src 'none';")
    .replace(/ *<!-- Read aloud[^]*?<\/div>\n/, "")
    .replace("<main></main>", () => `<main>\n${listOf(lessons)}\n    </main>`)
    .replace(/<footer>[^]*<\/footer>/, FOOTER);
}

function listOf(lessons: readonly Lesson[]): string {
  const minutes = lessons.reduce((sum, lesson) => sum + lesson.minutes, 0);
  const items = lessons.map(
    ({ name, heading, idea, before, minutes }) => `        <li>
          <h2><a href="${name}.html">${heading}</a></h2>
          <p>${idea}</p>
          <p class="quiet">Know before: ${before}. About ${minutes} minutes.</p>
        </li>`,
  );
  return `      <h1>Insect calendars, step by step</h1>
      <p>
        Pages to read, to try out and to teach with. Each has one idea, shows the code behind every figure, and ends in a
        question that you answer by changing something on the page. Read from first to last they take about
        ${Math.round(minutes / 30) / 2} hours; each also stands for itself.
      </p>
      <p>
        The temperatures in them are real, from open records. Classes, animals and logs are invented, and each page
        says so first. You can put in temperatures of your own: they stay in this browser.
      </p>
      <ol class="lessons">
${items.join("\n")}
      </ol>`;
}

const FOOTER = `<footer>
      <p>
        Made with Moltline. These pages work without a network. Keep them in one folder, so that the links between
        them work too.
      </p>
    </footer>`;
