/*
 * The kernel of the engine once more in C: what kernel.ts, rates.ts, elimination.ts and record.ts do, step for step, on the same
 * packed numbers (packed.ts), for the time it takes here. Equations, units and sources stand there.
 *
 * Usage: kernel packed.bin columns.bin. Writes the columns of one stint, then for each line of the input, a number of turns,
 * prints what one turn took on the mean [ms].
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { BELL, FLUID, CALIPER, PLATE, PAD, PAD_FACE, RIM, WALL, FACE = 13, NODES = 14, CAST = RIM };
enum { FACE_AIR, VANE_AIR, OTHER_AIR, RADIATION, CONDUCTED, BRAKE_HEAT, BOOKS };
enum { KINDS = 5, SURFACES = 5, CHEEK_NODES = 7, COLUMNS = 9, WALLS = 26, CELLS = 600, PIECES = 64, MOST_STEPS = 8 };
static const int PARENT[NODES] = {7, 2, 3, 4, 5, 13, 10, 8, 9, 10, 11, 12, 13, -1};
static const int CHEEK[CHEEK_NODES] = {13, 12, 11, 10, 9, 8, 7};
static const int RADIATING[SURFACES] = {FACE, WALL, RIM, BELL, CALIPER};
static const double WALL_LOW_K = 250, PER_WALL_STEP = 1.0 / 50, SPRAY_SCALE_K = 80;
static const double MOST_BEND = 1.1, LEAP_K = 400, ENOUGH_K = 0.01;

#define GAMMA 0.435866521508459
#define C21 -1.0156171083877703
#define C31 4.07599564525377
#define C32 9.20767942983308
#define M1 1.0
#define M2 6.1697947043828245
#define M3 -0.42772256543218573
#define G2 0.24291996454816805
#define G3 2.185138002766406
#define W3 (GAMMA * M3)
#define W2 (GAMMA * (M2 + C32 * W3))
#define W1 (GAMMA * (M1 + C21 * W2 + C31 * W3))
#define AT_GAMMA (1 - 6 * GAMMA + 6 * GAMMA * GAMMA)
static const double RISE[3] = {GAMMA - 0.5, GAMMA + G2 - 0.5, GAMMA + G3 - 0.5};
static const double BEND[3] = {1 - 6 * GAMMA, AT_GAMMA - 6 * G2, AT_GAMMA - 6 * G3};

typedef struct {
  double speedStep_mps, faceInWheelhouse, wheelhouseBuoyant, radiationKept;
  int speeds;
  const double *air_K, *surface[SURFACES], *wheelhouse, *recirculated, *sprayFace_W, *sprayVane_W;
} Map;

typedef struct {
  int steps;
  double share;
  const Map *map;
  const double *dt_s, *speed_mps, *power_W, *rise_W, *bend_W, *pressed;
} Lap;

typedef struct {
  const double *start_J, *link, *cheekShare, *radiation, *entries, *cellsPerJoule;
  int offset[NODES];
  double pressed_WpK, bridge_WpK4, hub_WpK, mount_WpK, discShare, drag_N;
  double enthalpy_J[NODES], booked_J[BOOKS];
  Lap *laps;
  double *columns[COLUMNS];
} Corner;

static double T[NODES], P[NODES], dT[NODES], dP[NODES], G[NODES], F[NODES];
static double loss[KINDS], lossBefore[KINDS], slope[14], at0[SURFACES], perK[SURFACES], wheelhouse_K;
static double K1[NODES], K2[NODES], K3[NODES], before_K[NODES], slopeBefore[NODES], up[NODES], down[NODES], pivot[NODES];
static double whole[3], power[3];
static struct {
  double pastRow, wheelhouse, recirculated, onFace, sprayFace, sprayVane, ambient, buoyant, kept;
  const Map *map;
  int row;
} air;

static inline double between(const double *values, int i, double w) {
  return values[i] + w * (values[i + 1] - values[i]);
}

static void setAir(const Map *map, double speed_mps) {
  double at = speed_mps / map->speedStep_mps;
  int i = (int)at < map->speeds - 2 ? (int)at : map->speeds - 2;
  double w = at - i;
  air.map = map;
  air.row = i * WALLS;
  air.pastRow = w;
  air.wheelhouse = between(map->wheelhouse, i, w);
  air.recirculated = between(map->recirculated, i, w);
  air.sprayFace = between(map->sprayFace_W, i, w);
  air.sprayVane = between(map->sprayVane_W, i, w);
  air.ambient = between(map->air_K, i, w);
  air.onFace = map->faceInWheelhouse;
  air.buoyant = map->wheelhouseBuoyant;
  air.kept = map->radiationKept;
  slope[12] = slope[13] = 0;
}

static inline int inside(int i, int last) { return i < 0 ? 0 : i < last ? i : last; }

static void lookUp(const Corner *s, const double *H) {
  for (int i = 0; i < NODES; i++) {
    double perJoule = s->cellsPerJoule[i], at = H[i] * perJoule;
    int cell = inside((int)at, CELLS - 1);
    const double *entry = s->entries + s->offset[i] + 2 * cell;
    double rise = entry[2] - entry[0];
    T[i] = entry[0] + (at - cell) * rise;
    dT[i] = rise * perJoule;
    if (i < CAST) continue;
    double climb = entry[3] - entry[1];
    P[i] = entry[1] + (at - cell) * climb;
    dP[i] = climb * perJoule;
  }
}

static void layLines(void) {
  for (int k = 0; k < SURFACES; k++) {
    const double *values = air.map->surface[k];
    double at = (T[RADIATING[k]] - WALL_LOW_K) * PER_WALL_STEP, w = air.pastRow;
    int j = inside((int)at, WALLS - 2), a = air.row + j;
    double cooler = values[a] + w * (values[a + WALLS] - values[a]);
    double hotter = values[a + 1] + w * (values[a + 1 + WALLS] - values[a + 1]);
    double rise = at < 0 ? 0 : hotter - cooler;
    perK[k] = rise * PER_WALL_STEP;
    at0[k] = cooler - rise * (WALL_LOW_K * PER_WALL_STEP + j);
  }
}

static double riseWheelhouse(double heat_W, double held_WpK, double driven_WpK, double buoyant) {
  double driven2 = driven_WpK * driven_WpK, buoyant2 = buoyant * buoyant;
  double rise = heat_W / (held_WpK + sqrt(driven2 + 64 * buoyant2));
  double change = 1;
  for (int step = 0; step < MOST_STEPS && fabs(change) > ENOUGH_K; step++) {
    double warm = sqrt(rise * rise + 1), carried = sqrt(driven2 + buoyant2 * warm);
    double excess = rise * (carried + held_WpK) - heat_W;
    double growth = carried + held_WpK + (buoyant2 * rise * rise) / (2 * carried * warm);
    change = excess / growth;
    rise -= change;
  }
  return rise;
}

static void boil(int node, double spray_W, int tangent, int isFirst) {
  double rise = T[node] - air.ambient, most = rise > 0 ? spray_W : 0;
  double part = most > 0 ? tanh(rise / SPRAY_SCALE_K) : 0;
  F[node] -= most * part;
  loss[OTHER_AIR] += most * part;
  if (isFirst) slope[tangent] = (most / SPRAY_SCALE_K) * (1 - part * part) * dT[node];
}

static void radiate(const double *surface, int isFirst) {
  double cold2 = air.ambient * air.ambient, total = 0;
  for (int j = 0; j < SURFACES; j++) {
    int node = RADIATING[j];
    double hot2 = T[node] * T[node], given = surface[j] * (hot2 * hot2 - cold2 * cold2);
    F[node] -= given;
    total += given;
    if (isFirst) slope[5 + j] = 4 * surface[j] * hot2 * T[node] * dT[node];
  }
  loss[RADIATION] = total;
}

static void bridge(double coefficient) {
  double hot2 = T[RIM] * T[RIM], cold2 = T[CALIPER] * T[CALIPER];
  double given = coefficient * (hot2 * hot2 - cold2 * cold2);
  F[RIM] -= given;
  F[CALIPER] += given;
}

static void convect(int isFirst) {
  double ambient = air.ambient, g[SURFACES], d[SURFACES], meets[SURFACES] = {air.onFace, air.recirculated, 1, 1, 1};
  for (int k = 0; k < SURFACES; k++) {
    g[k] = at0[k] + perK[k] * T[RADIATING[k]];
    d[k] = T[RADIATING[k]] - ambient;
  }
  if (isFirst) {
    double given = g[0] * d[0] + g[1] * d[1] + g[2] * d[2] + g[3] * d[3] + g[4] * d[4];
    double taken = g[0] * air.onFace + g[1] * air.recirculated + g[2] + g[3] + g[4];
    double offered = given + air.kept * loss[RADIATION];
    wheelhouse_K = ambient + riseWheelhouse(offered, taken, air.wheelhouse, air.buoyant);
  }
  double warmth = wheelhouse_K - ambient, q[SURFACES];
  for (int k = 0; k < SURFACES; k++) {
    d[k] -= meets[k] * warmth;
    if (isFirst) slope[k] = (g[k] + perK[k] * d[k]) * dT[RADIATING[k]];
    q[k] = g[k] * d[k];
  }
  for (int k = 0; k < SURFACES; k++) F[RADIATING[k]] -= q[k];
  loss[FACE_AIR] = q[0];
  loss[VANE_AIR] = q[1];
  loss[OTHER_AIR] = q[2] + q[3] + q[4];
}

static void evaluate(const Corner *s, const double *H, int isFirst) {
  lookUp(s, H);
  for (int i = 0; i < NODES; i++) F[i] = 0;
  for (int i = 0; i < FACE; i++) {
    int p = PARENT[i];
    double flux = G[i] * (i < CAST ? T[i] - T[p] : P[i] - P[p]);
    F[i] -= flux;
    F[p] += flux;
  }
  if (isFirst) layLines();
  radiate(s->radiation, isFirst);
  bridge(s->bridge_WpK4);
  convect(isFirst);
  if (air.sprayFace > 0) boil(FACE, air.sprayFace, 12, isFirst);
  if (air.sprayVane > 0) boil(WALL, air.sprayVane, 13, isFirst);
  double hub = s->hub_WpK * (T[BELL] - air.ambient), mount = s->mount_WpK * (T[CALIPER] - air.ambient);
  F[BELL] -= hub;
  F[CALIPER] -= mount;
  loss[CONDUCTED] = hub + mount;
  if (!isFirst) return;
  slope[10] = s->hub_WpK * dT[BELL];
  slope[11] = s->mount_WpK * dT[CALIPER];
}

static void factorise(double h) {
  for (int i = 0; i < NODES; i++) pivot[i] = 1;
  pivot[FACE] += h * (slope[0] + slope[5] + slope[12]);
  pivot[WALL] += h * (slope[1] + slope[6] + slope[13]);
  pivot[RIM] += h * (slope[2] + slope[7]);
  pivot[BELL] += h * (slope[3] + slope[8] + slope[10]);
  pivot[CALIPER] += h * (slope[4] + slope[9] + slope[11]);
  for (int i = 0; i < FACE; i++) {
    int p = PARENT[i];
    double g = h * G[i];
    double own = g * (i < CAST ? dT[i] : dP[i]), parents = g * (i < CAST ? dT[p] : dP[p]);
    double rest = pivot[i], inverse = 1 / (rest + own);
    pivot[i] = inverse;
    up[i] = own * inverse;
    down[i] = parents * inverse;
    pivot[p] += parents * rest * inverse;
  }
  pivot[FACE] = 1 / pivot[FACE];
}

static void solve(double *k) {
  for (int i = 0; i < FACE; i++) k[PARENT[i]] += up[i] * k[i];
  k[FACE] *= pivot[FACE];
  for (int i = FACE - 1; i >= 0; i--) k[i] = pivot[i] * k[i] + down[i] * k[PARENT[i]];
}

static void addSource(double *k, double discShare, double h, int stage) {
  double heat = h * (power[0] + RISE[stage] * power[1] + BEND[stage] * power[2]);
  k[FACE] += discShare * heat;
  k[PAD_FACE] += (1 - discShare) * heat;
}

static int tangentsHold(void) {
  for (int i = CAST; i < NODES; i++) {
    double was = slopeBefore[i], is = dT[i];
    if (is > MOST_BEND * was || was > MOST_BEND * is || fabs(T[i] - before_K[i]) > LEAP_K) return 0;
  }
  return 1;
}

static int stages(const Corner *s, const double *H, double dt) {
  double h = GAMMA * dt;
  factorise(h);
  memcpy(lossBefore, loss, sizeof loss);
  for (int i = 0; i < NODES; i++) {
    before_K[i] = T[i];
    slopeBefore[i] = dT[i];
    K1[i] = h * F[i];
  }
  addSource(K1, s->discShare, h, 0);
  solve(K1);
  for (int i = 0; i < NODES; i++) K2[i] = H[i] + K1[i];
  evaluate(s, K2, 0);
  for (int i = 0; i < NODES; i++) K2[i] = h * F[i] + GAMMA * C21 * K1[i];
  addSource(K2, s->discShare, h, 1);
  solve(K2);
  for (int i = 0; i < NODES; i++) K3[i] = h * F[i] + GAMMA * (C31 * K1[i] + C32 * K2[i]);
  addSource(K3, s->discShare, h, 2);
  solve(K3);
  return tangentsHold();
}

static void book(double *booked, double dt) {
  for (int i = 0; i < NODES; i++) K1[i] = W1 * K1[i] + W2 * K2[i] + W3 * K3[i];
  for (int j = 0; j < KINDS; j++) lossBefore[j] = W1 * lossBefore[j] + (W2 + W3) * loss[j];
  double face = K1[FACE], wall = K1[WALL], rim = K1[RIM], bell = K1[BELL], caliper = K1[CALIPER];
  double other = slope[2] * rim + slope[3] * bell + slope[4] * caliper + slope[12] * face + slope[13] * wall;
  double radiated = slope[5] * face + slope[6] * wall + slope[7] * rim + slope[8] * bell + slope[9] * caliper;
  booked[FACE_AIR] += dt * (lossBefore[FACE_AIR] + slope[0] * face);
  booked[VANE_AIR] += dt * (lossBefore[VANE_AIR] + slope[1] * wall);
  booked[OTHER_AIR] += dt * (lossBefore[OTHER_AIR] + other);
  booked[RADIATION] += dt * (lossBefore[RADIATION] + radiated);
  booked[CONDUCTED] += dt * (lossBefore[CONDUCTED] + slope[10] * bell + slope[11] * caliper);
  booked[BRAKE_HEAT] += dt * power[0];
}

static void record(const Corner *s, int sample) {
  double mean = 0;
  for (int i = 0; i < CHEEK_NODES; i++) mean += s->cheekShare[i] * T[CHEEK[i]];
  const double row[COLUMNS] = {T[FACE], mean, T[WALL], T[RIM], T[BELL], T[PAD_FACE], T[CALIPER], T[FLUID], wheelhouse_K};
  for (int i = 0; i < COLUMNS; i++) s->columns[i][sample] = row[i];
}

/* The parabola of the power over so many pieces of the step, after those that are done. */
static void takePart(int done, int cut) {
  double share = (double)cut / PIECES, middle = (double)done / PIECES + share / 2;
  double mean = whole[0], rise = whole[1], bend = whole[2];
  power[0] = mean + rise * (middle - 0.5) + bend * (1 - 6 * middle + 6 * middle * middle + (share * share) / 2);
  power[1] = share * (rise + bend * (12 * middle - 6));
  power[2] = share * share * bend;
}

static void driveLap(Corner *s, const Lap *lap, int first) {
  double *H = s->enthalpy_J;
  memcpy(G, s->link, sizeof G);
  for (int n = 0; n < lap->steps; n++) {
    double dt = lap->dt_s[n], speed = lap->speed_mps[n];
    setAir(lap->map, speed);
    G[PAD_FACE] = lap->pressed[n] ? s->pressed_WpK : s->link[PAD_FACE];
    whole[0] = lap->share * lap->power_W[n] + s->drag_N * speed;
    whole[1] = lap->share * lap->rise_W[n];
    whole[2] = lap->share * lap->bend_W[n];
    for (int done = 0, cut = PIECES; done < PIECES;) {
      evaluate(s, H, 1);
      if (done == 0) record(s, first + n);
      takePart(done, cut);
      double part_s = (double)cut / PIECES * dt;
      if (!stages(s, H, part_s) && cut > 1) {
        cut >>= 1;
        continue;
      }
      for (int i = 0; i < NODES; i++) H[i] += M1 * K1[i] + M2 * K2[i] + M3 * K3[i];
      book(s->booked_J, part_s);
      done += cut;
      cut = 2 * cut < PIECES - done ? 2 * cut : PIECES - done;
    }
  }
  evaluate(s, H, 1);
  record(s, first + lap->steps);
}

/* What follows reads the numbers and keeps the time. */

static const double *numbers;
static const double *take(int count) { return (numbers += count) - count; }
static double one(void) { return *take(1); }
static void *room(size_t size) { return calloc(1, size); }

static void readMap(Map *map) {
  map->speeds = (int)one();
  map->speedStep_mps = one();
  map->faceInWheelhouse = one();
  map->wheelhouseBuoyant = one();
  map->radiationKept = one();
  const double **alone[] = {&map->air_K, &map->wheelhouse, &map->recirculated, &map->sprayFace_W, &map->sprayVane_W};
  for (int i = 0; i < 5; i++) *alone[i] = take(map->speeds);
  for (int k = 0; k < SURFACES; k++) map->surface[k] = take(map->speeds * WALLS);
}

static void readCorner(Corner *s, int laps, int samples) {
  s->start_J = take(NODES);
  s->link = take(NODES);
  s->cheekShare = take(CHEEK_NODES);
  s->radiation = take(SURFACES);
  s->cellsPerJoule = take(NODES);
  for (int i = 0; i < NODES; i++) s->offset[i] = (int)one();
  double *alone[] = {&s->pressed_WpK, &s->bridge_WpK4, &s->hub_WpK, &s->mount_WpK, &s->discShare, &s->drag_N};
  for (int i = 0; i < 6; i++) *alone[i] = one();
  int entries = (int)one();
  s->entries = take(entries);
  int count = (int)one();
  Map *maps = room(count * sizeof(Map));
  for (int i = 0; i < count; i++) readMap(maps + i);
  s->laps = room(laps * sizeof(Lap));
  for (int i = 0; i < laps; i++) {
    Lap *lap = s->laps + i;
    lap->steps = (int)one();
    lap->map = maps + (int)one();
    lap->share = one();
    const double **each[] = {&lap->dt_s, &lap->speed_mps, &lap->power_W, &lap->rise_W, &lap->bend_W, &lap->pressed};
    for (int j = 0; j < 6; j++) *each[j] = take(lap->steps);
  }
  for (int i = 0; i < COLUMNS; i++) s->columns[i] = room(samples * sizeof(double));
}

static const double *readAll(const char *path) {
  FILE *file = fopen(path, "rb");
  if (!file) exit(1);
  fseek(file, 0, SEEK_END);
  long size = ftell(file);
  rewind(file);
  double *all = room(size);
  if (fread(all, 1, size, file) != (size_t)size) exit(1);
  fclose(file);
  return all;
}

static double now_ms(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return now.tv_sec * 1e3 + now.tv_nsec / 1e6;
}

static void driveAll(Corner *corners, int count, int laps) {
  for (Corner *s = corners; s < corners + count; s++) {
    memcpy(s->enthalpy_J, s->start_J, sizeof s->enthalpy_J);
    for (int i = 0, first = 0; i < laps; first += s->laps[i++].steps) driveLap(s, s->laps + i, first);
  }
}

int main(int count, char **arguments) {
  if (count < 3) return 1;
  numbers = readAll(arguments[1]);
  int cornerCount = (int)one(), laps = (int)one(), samples = (int)one();
  Corner *corners = room(cornerCount * sizeof(Corner));
  for (int i = 0; i < cornerCount; i++) readCorner(corners + i, laps, samples);
  driveAll(corners, cornerCount, laps);
  FILE *told = fopen(arguments[2], "wb");
  if (!told) return 1;
  for (int i = 0; i < cornerCount; i++)
    for (int j = 0; j < COLUMNS; j++) fwrite(corners[i].columns[j], sizeof(double), samples, told);
  fclose(told);
  puts("ready");
  fflush(stdout);
  for (int turns; scanf("%d", &turns) == 1; fflush(stdout)) {
    double start = now_ms();
    for (int n = 0; n < turns; n++) driveAll(corners, cornerCount, laps);
    printf("%.6f\n", (now_ms() - start) / turns);
  }
  return 0;
}
