import type { Plugin } from "vite";
import { type Lesson, wayAfter, wayBefore } from "./way.ts";

/**
 * Puts our own page around the cells: drops the kit's themes, which would be fetched and would set colours
 * below the contrast limit, numbers the code blocks for readers who hear the page, and links to the other
 * notebooks.
 * @param name The notebook, without its ending.
 * @param lessons All notebooks in the order of reading.
 */
export function ownPage(name: string, lessons: readonly Lesson[]): Plugin {
  return {
    name: "moltline:own-page",
    transformIndexHtml: {
      order: "pre",
      handler(html) {
        const themes = /<style type="text\/css">\s*@import url\("observable:styles\/theme-[^<]*<\/style>/;
        if (!themes.test(html)) throw new Error("the notebook kit no longer adds its theme where expected");
        let block = 0;
        return html
          .replace(themes, "")
          .replace("<main>", () => `${wayBefore(name, lessons)}<main>`)
          .replace("</main>", () => `</main>${wayAfter(name, lessons)}`)
          .replace(/<pre data-language="ts">/g, () => `<pre role="group" aria-label="Code ${++block}">`);
      },
    },
  };
}
