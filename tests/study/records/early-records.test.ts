import { describe, expect, it } from "vitest";
import { absent, editedText, problemsIn } from "../example.js";
import { csvOf, datesFrom } from "../records.js";

const year = datesFrom("2011-01-01", "2011-12-31");
const broken = csvOf(year, (date) => (date === "2011-02-03" ? "ice" : 640));

const pathsOf = (edits: Parameters<typeof editedText>[0]) =>
  problemsIn(editedText(edits)).map(({ path }) => path);

describe("faults of a record in an unfinished study", () => {
  it("are told although the lake's storage table and limits are missing", () => {
    const paths = pathsOf([
      ["lake.drawdown", absent],
      ["lake.storageTable", absent],
      ["lake.minimumElevation", absent],
      ["lake.record", { csv: broken, origin: "invented gauge" }],
    ]);
    expect(paths).toContain("lake.storageTable");
    expect(paths).toContain("lake.record.csv, line 35");
  });

  it("are told of another schedule's record as well", () => {
    const paths = pathsOf([
      ["lake.storageTable", absent],
      ["lake.otherSchedules", [{ id: "deep", name: "Deep", record: { csv: broken, origin: "a plan" } }]],
    ]);
    expect(paths).toContain('lake.otherSchedules[0 "deep"].record.csv, line 35');
  });

  it("are told once where the lake can be read", () => {
    const paths = pathsOf([
      ["lake.drawdown", absent],
      ["money.priceYear", absent],
      ["lake.record", { csv: broken, origin: "invented gauge" }],
    ]);
    expect(paths.filter((path) => path.startsWith("lake.record"))).toEqual(["lake.record.csv, line 35"]);
  });

  it("are told of a season log and of counts while launches are missing", () => {
    const seasons = "season,class,screened,setAside,fouled\n2024,day-use,10,2,11\n";
    const paths = pathsOf([
      ["boats.launches", absent],
      ["boats.seasons", { csv: seasons, origin: "log" }],
      ["boats.traffic.dayTypes", absent],
      ["boats.traffic.csv", "date,hour,launches\n2024-02-30,8,3\n"],
      ["boats.traffic.monthGroups", [{ id: "all", name: "All year", months: ["feb"] }]],
    ]);
    expect(paths).toContain("boats.seasons.csv, line 2");
    expect(paths).toContain("boats.traffic.csv, line 2");
  });
});
