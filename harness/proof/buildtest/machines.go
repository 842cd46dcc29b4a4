package buildtest

// Machines has two alternators: an isolator leads the first one to both batteries, the second charges the house battery
// beside it. Each battery has loads of its own.
const Machines = `
fusewright: 1
title: two machines
system: 12 V
practice: marine
battery: {chemistry: flooded, capacity: 110 Ah, resistance: 4 mΩ, at: bay, fed by: start end, wire: {length: 150 mm}}
batteries:
  house: {chemistry: AGM, capacity: 200 Ah, resistance: 3 mΩ, at: bay, fed by: [port end, star end], wire: {length: 150 mm}, returns to: battery negative, return wire: {size: 35 mm²}}
charging: {kind: alternator, at: bay, regulated: 14.4 V, output: {700 rpm: 20 A, 1500 rpm: 50 A, 3000 rpm: 65 A}, idle: 750 rpm, cruise: 2600 rpm}
chargers:
  starboard: {type: alternator 60 A, output by speed: {700 rpm: 18 A, 1500 rpm: 45 A, 3000 rpm: 58 A}, at: bay, returns to: battery negative}
vehicle loads: {stop solenoid: 40 W}
places: {bay: {ambient: 50 °C, petrol vapour: no}}
wire: {insulation: tinned marine 105 °C metric, size: 25 mm², colour: RD, return colour: YE}
diodes:
  isolator: {type: diode isolator 70 A, outputs: 2, at: bay, fed by: charging}
fuses:
  start end: {type: marine strip, rating: 100 A, at: bay, fed by: isolator 1}
  port end: {type: marine strip, rating: 100 A, at: bay, fed by: isolator 2}
  star end: {type: marine strip, rating: 100 A, at: bay, fed by: starboard}
  windlass fuse: {type: marine strip, rating: 150 A, at: bay, fed by: battery}
  house main: {type: marine strip, rating: 80 A, at: bay, fed by: house}
loads:
  windlass: {power: 1200 W, behaves: motor, wire: {length: 600 mm}, at: bay, fed by: windlass fuse, returns to: battery negative, own switch: yes}
  heater: {power: 240 W, behaves: resistor, at: bay, fed by: house main, wire: {length: 600 mm}, returns to: house negative, own switch: yes}
situations:
  cruise: {engine: cruise, on: [heater]}
  idle: {engine: idle, on: [heater]}
  anchoring: {engine: idle, on: [windlass]}
  at anchor: {key: off, on: [heater]}
rides:
  day:
    charge: {house: 60 %}
    legs:
      - {lasts: 1 h, situation: cruise}
      - {lasts: 2 h, situation: at anchor}
`
