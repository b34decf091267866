/** Every import that goes the wrong way, as `file imports target`, over the rooms below `root`. */
export function wrongArrows(root: string): string[];
