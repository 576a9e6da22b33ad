// Stands in for modules that a page works without; see build/offline-imports.ts.
export {};
