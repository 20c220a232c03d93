/** A name in camel case as people write it: `commandSystem` is `command system`. */
export const toWords = (camel: string) => camel.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** As it stands in an address: `commandSystems` is `command-systems`. */
export const toPath = (camel: string) => camel.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

export const capitalise = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
