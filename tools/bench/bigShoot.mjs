/** A big shoot, made of the demo several times over: some 200 pieces, 20 glasses, 20 builds, 96 shots. */
export function bigShoot(demo) {
  const times = [0, 1, 2, 3];
  const named = (id, time) => (time === 0 ? id : `${id}-${time}`);
  const builds = Object.fromEntries(times.flatMap((time) => Object.entries(demo.builds).map(([id, build]) => [named(id, time), { ...build, name: `${build.name} ${time + 1}` }])));
  const glasses = Object.fromEntries([0, 1].flatMap((time) => Object.entries(demo.glasses).map(([id, glass]) => [named(id, time), { ...glass, name: `${glass.name} ${time + 1}` }])));
  const setups = Object.fromEntries(times.flatMap((time) => Object.entries(demo.setups).map(([id, setup]) => [named(id, time), {
    ...setup, name: `${setup.name} ${time + 1}`, camera: named(setup.camera, time), stations: (setup.stations ?? []).map((station) => named(station, time)), glasses: setup.glasses.map((glass) => named(glass, time % 2)),
  }])));
  const shots = Object.fromEntries([0, 1, 2, 3, 4, 5, 6, 7].flatMap((time) => Object.entries(demo.shots).map(([id, shot]) => [named(id, time), {
    ...shot, name: `${shot.name} ${time + 1}`, setup: named(shot.setup, time % 4), glass: named(shot.glass, (time % 4) % 2), ...(shot.after === undefined ? {} : { after: shot.after.map((one) => named(one, time)) }),
  }])));
  return { ...demo, title: 'A big one', builds, glasses, setups, shots };
}
