/** What loggers call the columns that a stint needs, in English and in a few words of its neighbours. */
import type { TraceRole } from '../circuit/understood.ts';

/** Names of one role, best first: a file with a 'Speed' and a 'GPS speed' means the first. */
const NAMES: readonly [TraceRole, readonly RegExp[]][] = [
  [
    'time',
    [
      /^(unix|epoch|posix|elapsed|log|logger|session|run|recording|relative|rel|abs|absolute|running|total)? ?(time|t|zeit|temps|tiempo|tempo)( stamp| elapsed| abs| rel| relative?| s)?$/,
      /^(seconds|secs?|millis|micros|nanos|ms|us|ns|timestamp|zeitstempel|laufzeit|messzeit|date ?time|clock|uhrzeit|heure|hora|ora|chrono|datum zeit)$/,
      /^(gps|utc|local|system|world)? ?(time|clock|zeit)( of day| utc| local)?$/,
      /^(lap|runden|sample)? ?(time|zeit)$|^temps (au )?tour$|^tiempo (de )?vuelta$|^tempo (sul )?giro$/,
    ],
  ],
  [
    'distance',
    [
      /^(distance|dist|weg|strecke|wegstrecke|distanz|distanza|distancia|percorso|recorrido|streckenlange|s)$/,
      /^(lap|runden?|total|cumulative|cum|trip|driven|track|corrected|travelled|gefahrene?|gps|session)? ?(distance|dist|weg|strecke|distanz|odometer|odo)( (lap|total|travelled|driven|tour|vuelta|giro|parcourue|recorrida|percorsa))?$/,
      /^(track |lap )?(position|pos|station|chainage)$/,
    ],
  ],
  [
    'speed',
    [
      /^(speed|velocity|vel|v|spd|geschwindigkeit|geschw|vitesse|velocidad|velocita|veloc|tempo fahrzeug)$/,
      /^(car|vehicle|veh|ground|corrected|corr|true|fahrzeug|auto|road)? ?(speed|velocity|vel|v|spd|geschwindigkeit|geschw)( (car|veh|vehicle|ground|x|over ground|corr|true))?$|^(v ?(car|veh|fahrzeug|fzg)|sog|vitesse (voiture|vehicule)|velocita (vettura|auto|veicolo)|velocidad (coche|vehiculo))$/,
      /^(gps|gnss|v ?gps)( (speed|velocity|vel|v|spd|geschwindigkeit|geschw))?$|^(speed|vel|velocity|v|vitesse|velocidad|velocita|geschwindigkeit|geschw) (gps|gnss)$/,
      /^(wheel|rad|roue)? ?(speed|spd|v|geschwindigkeit)( (wheel|fl|fr|rl|rr|f|r|front|rear|avg|mean))?$/,
    ],
  ],
  [
    'lap',
    [
      /^(lap|laps|runde|rundennummer|tour|vuelta|giro)$|^n ?lap$/,
      /^(lap|runden?|tour|giro|vuelta) ?(no|nr|num|number|count|counter|index|id|nummer|zahler)$|^(no|nr|num|number|numero|n)( (de|du|di|of))? ?(laps?|tours?|vueltas?|giri|giro|runden?)$/,
      /^(lap )?(beacon|marker|trigger)$|^lap (start|signal)$/,
    ],
  ],
  [
    'slope',
    [
      /^(road |track )?(slope|grade|gradient|steigung|neigung|pente|pendiente|pendenza|inclination|inclinaison)$/,
    ],
  ],
  [
    'altitude',
    [
      /^(altitude|alt|height|elevation|elev|ele|z|hohe|hoehe|altitud|altura|quota|altezza)$/,
      /^(gps|gnss|baro|barometric) ?(altitude|alt|height|elevation|hohe|hoehe|quota)$|^(altitude|alt|height) (gps|baro|m?asl)$/,
    ],
  ],
  [
    'acceleration',
    [
      /^(long|longitudinal|inline|forward|x|gps long|langs|laengs)? ?(acceleration|accel|acc|a|g|g ?force|beschleunigung|acceler)( (long|longitudinal|x|inline|forward|langs|laengs))?$/,
      /^(ax|gx|g ?long|a ?long|along|acc ?x|accel ?x|acc ?long|long ?g|langsbeschleunigung|laengsbeschleunigung|longg|glong)$/,
      /^acceleration longitudinale|^accelerazione longitudinale|^aceleracion longitudinal|^acc long(itudinale?)?$/,
    ],
  ],
];

const BRAKE =
  /\b(p ?)?(brakes?|brk|brake?s?|brems(e|en)?|bremsdruck|freins?|freno|freni|frenos)(f|r)?\b|\bpbrk?(f|r)?\b|\bpbrake(f|r)?\b/;
const PRESSURE =
  /\b(pressure|press|pres|druck|bremsdruck|pression|presion|pressione|p|line|circuit)\b|\bp(brake|brk)/;
const NOT_PRESSURE =
  /temp|disc|disk|rotor|bias|balance|switch|light|lamp|pedal|pos\b|position|percent|on off|status|wear|duct|caliper|force/;
const FRONT =
  /\b(front|f|fr|fl|fa|vorn|vorne|va|vr|vl|avant|av|avg|avd|delantero|delantera|anteriore|ant)\b|(brake|brk)f\b/;
const REAR =
  /\b(rear|r|rr|rl|ra|hinten|ha|hr|hl|arriere|ar|trasero|trasera|posteriore|post)\b|(brake|brk)r\b/;

/** Lower case, without accents, one space where there was anything but letters and digits. */
export const plainName = (name: string): string =>
  name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ß/g, 'ss')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

/** A letter may stand for much else, 'V' for volts: it gives way to every word. */
const LETTER_RANK = 5;

export const isLetter = (plain: string): boolean => plain.length === 1;

export interface NamedRole {
  role: TraceRole;
  /** 0 for the plainest name of the role; a higher rank gives way. */
  rank: number;
}

/** The role that a name speaks of; nothing where it speaks of none. */
export function roleNamed(name: string): NamedRole | undefined {
  const plain = plainName(name);
  for (const [role, ranks] of NAMES) {
    const rank = ranks.findIndex((pattern) => pattern.test(plain));
    if (rank >= 0) return { role, rank: rank + (isLetter(plain) && role !== 'time' ? LETTER_RANK : 0) };
  }
  return brakeNamed(plain);
}

/** A pressure without an axle is the front's; a name without a pressure may be a pedal's or a switch's. */
function brakeNamed(plain: string): NamedRole | undefined {
  if (!BRAKE.test(plain) || NOT_PRESSURE.test(plain)) return undefined;
  const axle = FRONT.test(plain) ? 'front' : REAR.test(plain) ? 'rear' : undefined;
  if (!axle && !PRESSURE.test(plain)) return undefined;
  return { role: `${axle ?? 'front'} brake pressure`, rank: (axle ? 0 : 1) + (PRESSURE.test(plain) ? 0 : 1) };
}
