/** Meetings that the lists have room for at first. */
const ROOM = 32_768;

/** Every site and point where a hole may meet a joist; the lists grow as they fill. */
export interface Meetings {
  count: number;
  sites: Int32Array;
  points: Int32Array;
  excess: Float64Array;
}

/** No meetings yet. */
export const noMeetings = (): Meetings => ({
  count: 0,
  sites: new Int32Array(ROOM),
  points: new Int32Array(ROOM),
  excess: new Float64Array(ROOM),
});

/** Adds one meeting. */
export function addMeeting(meetings: Meetings, site: number, point: number, excess: number): void {
  const { count, sites, points } = meetings;
  if (count === sites.length) {
    const longer = <T extends Int32Array | Float64Array>(list: T, empty: T): T => {
      empty.set(list);
      return empty;
    };
    meetings.sites = longer(sites, new Int32Array(2 * count));
    meetings.points = longer(points, new Int32Array(2 * count));
    meetings.excess = longer(meetings.excess, new Float64Array(2 * count));
  }
  meetings.sites[count] = site;
  meetings.points[count] = point;
  meetings.excess[count] = excess;
  meetings.count += 1;
}

/** The meetings of site `s` are those from `starts[s]` up to `starts[s + 1]`. */
export interface MeetingsBySite {
  readonly starts: Int32Array;
  readonly points: Int32Array;
  readonly excess: Float64Array;
}

/** The meetings sorted by site. */
export function meetingsBySite({ count, sites, points, excess }: Meetings, of: number): MeetingsBySite {
  const starts = new Int32Array(of + 1);
  for (let i = 0; i < count; i++) starts[sites[i] + 1] += 1;
  for (let site = 0; site < of; site++) starts[site + 1] += starts[site];
  const next = starts.slice();
  const sorted = { starts, points: new Int32Array(count), excess: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    const place = next[sites[i]]++;
    sorted.points[place] = points[i];
    sorted.excess[place] = excess[i];
  }
  return sorted;
}
