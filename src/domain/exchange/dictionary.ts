/**
 * What programmes are likely to hold, for deflate to point back to (RFC 1951 leaves the first
 * window open; RFC 1950 calls it a preset dictionary). The likeliest stands last, where pointing
 * is cheapest. Never changed once published: a code that was made with it is read with it. Other
 * words need another version of the packet.
 */
export const DICTIONARY_1: string = [
  ' Meet at Sunday Saturday  week, walking, running, mostly Can run minutes without a ',
  'stop. New to exercise all ","Rest well. Start slower Finish every session with ',
  'something left. Light legs. Talk as you go. the longest easy day, the distance, as ',
  'you like, and then sea wall. A little longer. Hold what you have. uphill downhill ',
  'loose-hands quiet-feet breathe-out easy-breath look-both-ways be-seen one-ear ',
  'give-way sharp-pain unwell heat slippery start-slow own-pace something-left ',
  'walking-is-fine ","change":" 10 km 21 km 12 weeks to 10 weeks to Eight weeks to Six ',
  'weeks to the "},"reminders":["stand-tall","even-arms","soft-shoulders","light-steps","',
  'talk-test","sip"]}stand; min stretch; slow walk for strong run; fast run; steady run ',
  "@ 60%; @ 70% \"1:30 2:30 1' 2' 5' sets of 30\" warm-up: ; main: ; cool-down: 5 min easy ",
  'walk10 min easy walk; 15 min steady run; 5 min easy ',
  'walk{"format":"towpath-programme/1","id":"-spring-autumn-summer","revision":2,"title":',
  '"","language":"en-GB","startDate":"2027-0","goal":{"name":"","distanceM":5000,"date":"',
  '2027-0"},"leader":{"name":"","sign":"A","seal":"A","was":[{"sign":"A","proof":""}]},"g',
  'roups":[{"id":"","name":"","for":""},{"id":""}],"weeks":[{"focus":"","effort":50,"time',
  'sPerWeek":{"min":2,"max":3},"sessions":{"":["5 min easy walk; 12 x (20 s fast run, 40 ',
  's easy jog); 5 min easy walk","5 min easy walk; 20 min run; 10 min easy jog; 25 min ',
  'run; 30 min run; 5 min easy walk"],"":"5 min easy walk; 2 x (10 min run, 2 min walk); ',
  '5 min easy walk","":"5 min easy walk; 3 x (8 min jog, 90 s walk); 5 min easy ',
  'walk","":"5 min easy walk; 9 x (30 s run, 1 min 30 s walk); 5 min easy walk","":"5 ',
  'min easy walk; 8 x (2 min 30 s brisk walk, 1 min 15 s easy jog); 5 min easy ',
  'walk","":"5 min easy walk; 10 x (1 min easy jog, 2 min walk); 5 min easy walk","":"5 ',
  'min easy walk; 5 x (4 min brisk walk, 1 min walk); 5 min easy walk","":"5 min easy ',
  'walk; 4 x (3 min run, 1 min walk); 5 min easy ',
  'walk"}},{"focus":"","effort":60,"timesPerWeek":{"min":2,"max":3},"together":1,"session',
  's":{"":"5 min easy walk; 6 x (2 min jog, 1 min walk); 5 min easy walk","":"5 min easy ',
  'walk; 7 x (1 min walk, 2 min run); 5 min easy walk',
].join('');

/** The same for what participants tell their leader. Never changed once published either. */
export const RESPONSE_DICTIONARY_1: string = [
  'Etc/UTC America/New_York Asia/Australia/Africa/Europe/Europe/London',
  '{"place":"foot","side":"both"}{"place":"ankle"}{"place":"shin"}{"place":"calf"}',
  '{"place":"thigh"}{"place":"hip"}{"place":"back"}{"place":"other"}',
  '{"format":"towpath-response/1","programme":{"id":"-spring-autumn-summer","revision":2},',
  '"secret":"","name":"","group":"","sentAt":18,"leftOut":0,"entries":[',
  '{"id":"","week":1,"session":1,"group":"","startedAt":18,"offsetMinutes":60,',
  '"zone":"Europe/","localDate":"2027-0","doneSeconds":1860,"activeSeconds":1860,"target":60,',
  '"effort":6,"effortLater":5,"niggle":{"place":"knee","side":"left","severity":1},',
  '"warningSign":true,"note":""}]}',
  '"effort":5},{"id":"","week":2,"session":2,"startedAt":18,"offsetMinutes":0,"zone":"Europe/',
  'London","localDate":"2027-0","doneSeconds":1860,"activeSeconds":1860,"target":50,"effort":4}',
].join('');
