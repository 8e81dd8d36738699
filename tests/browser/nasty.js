// Scenarios nobody ships: names that are far too long, hostile or written from right to left, many of everything.
// All figures are invented.

const text = (words) => JSON.stringify(words);

/** A scenario file with these zones, loaders and rakers (names), and alternatives (name and number of rakers). */
function scenario({ title, zones, loaders, rakers, alternatives = [] }) {
  const zone = (name, i) => `
[[zone]]
name = ${text(name)}
volume = "${1 + (i % 3)} m3"
distance = "${15 + i} m"
room = 2`;
  const loader = (name) => `
[[loader]]
name = ${text(name)}
heaped = "0.25 m3"
struck = "0.2 m3"
bucket_mass = "60 kg"
hydraulic_lift = "700 kg"
width = "1.3 m"
speed_loaded = "4 km/h"
speed_empty = "6 km/h"
loading = "25 s"
dumping = "12 s"
machine_cost = "$31/h"
operator_cost = "$36/h"
fuel_working = "3 l/h"`;
  const raker = (name) => `
[[raker]]
name = ${text(name)}
rate = "6 m3/h"
cost = "$24/h"`;
  const alternative = ([name, change]) => `
[[alternative]]
name = ${text(name)}
change = { ${Object.entries(change).map(([key, value]) => `${text(key)} = ${JSON.stringify(value)}`).join(', ')} }`;
  const need = zones.reduce((sum, _, i) => sum + 1 + (i % 3), 0);
  return `title = ${text(title)}
units = "metric"
date = "2027-05-08"

[material]
name = "bark mulch"

[[stockpile]]
name = ${text(`pile of ${zones[0]}`.slice(0, LONGEST))}
on_hand = "${need + 2} m3"
price = "$900"
${zones.map(zone).join('\n')}
${loaders.map(loader).join('\n')}
${rakers.map(raker).join('\n')}

[shift]
start = "07:30"
breaks = [ "10:00-10:15", "12:00-12:30" ]
clean_up = "15 min"

[money]
fuel_price = "$1.80/l"
${alternatives.map(alternative).join('\n')}
`;
}

const numbered = (n, name) => Array.from({ length: n }, (_, i) => name(i + 1));

/** As long as a name may be. */
const LONGEST = 80;
const LONG = 'the lower terrace behind the second greenhouse and the whole of the drystone wall';
const cut = (name) => name.slice(0, LONGEST);
const UNBROKEN = 'Regenwassersammelbeckenumrandungskiesaufschuettungsflaeche';
const HOSTILE = '<script>window.hit = 1</script>';
const HOSTILE_TOO = '"><img src=x onerror="window.hit = 2"></style></svg>&amp;';
const FROM_RIGHT = 'حديقة البرتقال الكبيرة';
const FROM_RIGHT_TOO = 'הגן העליון ליד הבאר';

/** Name of each case, its scenario, and a list of buckets where one is tried. */
export const CASES = [
  {
    name: 'long-names',
    toml: scenario({
      title: cut(`Mulch for ${LONG}`),
      zones: [cut(LONG), UNBROKEN, cut(`second ${LONG}`)],
      loaders: [cut(`the loader of ${LONG}`), UNBROKEN],
      rakers: [cut(`whoever helps with ${LONG}`)],
      alternatives: [
        [cut(`an early start on ${LONG}`), { 'shift.start': '06:30' }],
        [UNBROKEN, { 'shift.start': '08:30', 'shift.breaks': [] }],
      ],
    }),
    buckets: [cut(`a bucket for ${LONG}`), UNBROKEN],
  },
  {
    name: 'thirty-zones-twelve-loaders',
    toml: scenario({
      title: 'Thirty beds, twelve loaders',
      zones: numbered(30, (n) => `bed ${n} by the river`),
      loaders: numbered(12, (n) => `loader ${n} from the yard`),
      rakers: numbered(9, (n) => `helper ${n}`),
      alternatives: numbered(9, (n) => [`choice ${n} of nine`, { 'shift.start': `0${6 + (n % 3)}:${10 + n}` }]),
    }),
  },
  {
    name: 'hostile-names',
    toml: scenario({
      title: HOSTILE_TOO,
      zones: [HOSTILE, `${HOSTILE_TOO} 2`],
      loaders: [`${HOSTILE} loader`, `${HOSTILE_TOO} loader`],
      rakers: [`${HOSTILE} raker`],
      alternatives: [[HOSTILE, { 'shift.start': '06:30' }]],
    }),
    buckets: [HOSTILE, "plain ' & <b>bold</b>"],
  },
  {
    name: 'right-to-left',
    toml: scenario({
      title: FROM_RIGHT,
      zones: [FROM_RIGHT, FROM_RIGHT_TOO, '庭の東側の花壇'],
      loaders: ['مجرفة صغيرة'],
      rakers: ['עוזר'],
      alternatives: [[FROM_RIGHT_TOO, { 'shift.start': '06:30' }]],
    }),
    buckets: [FROM_RIGHT, FROM_RIGHT_TOO],
  },
  {
    name: 'many-buckets',
    toml: scenario({ title: 'Many buckets', zones: ['bed', 'path'], loaders: ['loader'], rakers: ['helper'] }),
    buckets: numbered(24, (n) => `bucket ${n} of the dealer's list`),
  },
];

/** A list of buckets with these names, each a little larger than the one before. */
export function bucketList(names) {
  const line = (name, i) => {
    const heaped = 90 + 35 * i;
    return `"${name.replaceAll('"', '""')}",${heaped * 0.8} l,${heaped} l,${100 + i} cm,${50 + 3 * i} kg,$${400 + 60 * i}`;
  };
  return ['name,struck,heaped,width,mass,price', ...names.map(line), ''].join('\n');
}
