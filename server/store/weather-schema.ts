/**
 * The weather of each day: measured, or foretold until a later file tells what it was.
 *
 * No record of the farm's work: a day is written over, so that a forecast gives way to what was measured.
 */
export const WEATHER_SCHEMA = `
  CREATE TABLE weather (
    day_ms INTEGER PRIMARY KEY,
    celsius REAL NOT NULL,
    rain_mm REAL NOT NULL CHECK (rain_mm >= 0),
    forecast INTEGER NOT NULL CHECK (forecast IN (0, 1))
  ) STRICT;
`;
