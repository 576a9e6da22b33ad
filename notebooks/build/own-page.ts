import type { Plugin } from "vite";

/**
 * Puts our own page around the cells: drops the kit's themes, which would be fetched and would set colours
 * below the contrast limit, and numbers the code blocks for readers who hear the page.
 */
export function ownPage(): Plugin {
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
          .replace(/<pre data-language="ts">/g, () => `<pre role="group" aria-label="Code ${++block}">`);
      },
    },
  };
}
