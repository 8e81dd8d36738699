// What the builder and wasm-bindgen put beside the page's scripts.
declare var wasm_bindgen: any;
declare const BUILD: { name: string, files: [string, string][] };
