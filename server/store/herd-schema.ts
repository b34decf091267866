/**
 * The herd with all that the farm keeps of it, its weights, scores and notes.
 *
 * `animals` is made anew: a name or a tag may come again once its wearer has left, which a UNIQUE column forbids. The
 * number stands for the animal in long tables, where its id of 36 letters would be most of a row.
 */
export const HERD_SCHEMA = `
  CREATE TABLE herd (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    species TEXT NOT NULL CHECK (species IN ('goat', 'sheep', 'cattle')),
    class TEXT NOT NULL CHECK (class IN ('female', 'male', 'castrate', 'young')),
    tag TEXT CHECK (tag IS NULL OR length(tag) = 15),
    visual_tags TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(visual_tags)),
    former_tags TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(former_tags)),
    in_milk INTEGER NOT NULL CHECK (in_milk IN (0, 1)),
    in_milk_since_ms INTEGER,
    born_at_ms INTEGER,
    bred_at_ms INTEGER,
    kidded_at_ms INTEGER,
    males_removed_at_ms INTEGER,
    pen TEXT,
    mark TEXT,
    photo TEXT,
    life TEXT NOT NULL DEFAULT 'present' CHECK (life IN ('present', 'sold', 'died', 'merged')),
    left_at_ms INTEGER,
    left_by TEXT,
    merged_into_id TEXT,
    CHECK ((life = 'present') = (left_at_ms IS NULL)),
    CHECK ((life = 'merged') = (merged_into_id IS NOT NULL))
  ) STRICT;

  INSERT INTO herd (id, name, species, class, tag, in_milk, born_at_ms, bred_at_ms, males_removed_at_ms)
  SELECT id, name, species, class, tag, in_milk, born_at_ms, bred_at_ms, males_removed_at_ms
  FROM animals ORDER BY rowid;

  CREATE TABLE weighings (
    animal INTEGER NOT NULL REFERENCES animals (number),
    at_ms INTEGER NOT NULL,
    mass_g REAL NOT NULL CHECK (mass_g > 0),
    uncertainty_g REAL CHECK (uncertainty_g >= 0),
    method TEXT NOT NULL CHECK (method IN ('scale', 'girth', 'guess', 'imported')),
    hours_off_feed REAL CHECK (hours_off_feed >= 0),
    by TEXT NOT NULL,
    PRIMARY KEY (animal, at_ms, mass_g)
  ) STRICT, WITHOUT ROWID;

  INSERT INTO weighings (animal, at_ms, mass_g, method, by)
  SELECT herd.number, animals.first_weighed_at_ms, animals.first_weight_g, 'imported', ''
  FROM animals JOIN herd ON herd.id = animals.id
  WHERE animals.first_weight_g > 0 AND animals.first_weighed_at_ms IS NOT NULL;

  DROP TABLE animals;
  ALTER TABLE herd RENAME TO animals;
  CREATE UNIQUE INDEX one_animal_a_name ON animals (name) WHERE life = 'present';
  CREATE UNIQUE INDEX one_animal_a_tag ON animals (tag) WHERE life = 'present';

  CREATE TABLE animal_changes (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    animal INTEGER NOT NULL REFERENCES animals (number),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    before TEXT NOT NULL CHECK (json_valid(before)),
    after TEXT NOT NULL CHECK (json_valid(after))
  ) STRICT;

  CREATE TABLE scores (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    animal INTEGER NOT NULL REFERENCES animals (number),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    eyelid INTEGER CHECK (eyelid BETWEEN 1 AND 5),
    body REAL CHECK (body BETWEEN 1 AND 5 AND body * 2 = round(body * 2)),
    soiling INTEGER CHECK (soiling BETWEEN 0 AND 5),
    jaw TEXT CHECK (jaw IN ('none', 'swollen')),
    coat TEXT CHECK (coat IN ('smooth', 'rough')),
    CHECK (coalesce(eyelid, body, soiling, jaw, coat) IS NOT NULL)
  ) STRICT;
  CREATE INDEX scores_of_an_animal ON scores (animal, at_ms);

  CREATE TABLE notes (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    animal INTEGER NOT NULL REFERENCES animals (number),
    at_ms INTEGER NOT NULL,
    by TEXT NOT NULL,
    note TEXT NOT NULL
  ) STRICT;
  CREATE INDEX notes_of_an_animal ON notes (animal, at_ms);
  ${['weighings', 'animal_changes', 'scores', 'notes']
    .map(
      (table) => `
  CREATE TRIGGER ${table}_are_never_edited BEFORE UPDATE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'what was seen of an animal is never edited'); END;
  CREATE TRIGGER ${table}_are_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted of an animal'); END;`,
    )
    .join('')}
  CREATE TRIGGER animals_are_never_deleted BEFORE DELETE ON animals
  BEGIN SELECT RAISE(ABORT, 'nothing is deleted of an animal'); END;
`;
