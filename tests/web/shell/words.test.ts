import { describe, expect, it } from "vitest";
import { dayAndTime } from "../../../src/web/shell/instant.ts";
import { roleList } from "../../../src/web/shell/role-words.ts";

describe("words of the pages", () => {
  // the clocks of Europe/London went forward on 28 March 2027 at 01:00 UTC: IANA time zone database, rule EU
  it("tell an instant by the clocks of the club room", () => {
    expect(dayAndTime("2027-03-28T00:30:00.000Z", "Europe/London")).toBe("Sun 28 Mar 2027, 00:30");
    expect(dayAndTime("2027-03-28T01:30:00.000Z", "Europe/London")).toBe("Sun 28 Mar 2027, 02:30");
    expect(dayAndTime("2027-03-28T23:30:00.000Z", "Asia/Tokyo")).toBe("Mon 29 Mar 2027, 08:30");
  });

  it("name one's roles, and a member who has none", () => {
    expect(roleList(["member", "layout owner", "timetable clerk"])).toBe("Layout owner, timetable clerk");
    expect(roleList(["member"])).toBe("Member");
    expect(roleList([])).toBe("Member");
  });
});
