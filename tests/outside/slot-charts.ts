/** A slot chart as a manual prints it, and what a person reads in it. */
export interface SlotChart {
  /** What is usual about it. */
  readonly habit: string;
  readonly text: string;
  /** A mode's rows: `break:slots name = attribute guess {part} default | values`, values apart by ` / `. */
  readonly modes: Readonly<Record<string, readonly string[]>>;
  /** Lines left out, with the reason; none when not given. */
  readonly leftOut?: readonly string[];
  readonly remarks?: readonly string[];
}

/**
 * Charts in the habits of manuals (common practice), of units that nobody makes. Rows were counted and attributes named by
 * hand; attribute names are those of GDTF (DIN SPEC 15800), Annex B.
 */
export const SLOT_CHARTS: readonly SlotChart[] = [
  {
    habit: 'a typed list, values under the row they belong to, all of twenty slots',
    text: `Orrery Lights – Tern 400 moving profile
20 CH mode
CH1: Pan
CH2: Pan fine
CH3: Tilt
CH4: Tilt fine
CH5: Pan/Tilt speed
CH6: Shutter
  0-15    Closed
  16-31   Open
  32-127  Strobe slow→fast
  128-191 Pulse strobe
  192-255 Open
CH7: Dimmer
CH8: Dimmer fine
CH9: Cyan
CH10: Magenta
CH11: Yellow
CH12: CTO
CH13: Colour wheel
  0-9     White
  10-127  Red, blue, lavender
  128-255 Rotation
CH14: Gobo wheel 1
CH15: Gobo 1 rotation
CH16: Prism
CH17: Frost
CH18: Zoom
CH19: Focus
CH20: Control`,
    modes: {
      '20 CH mode': [
        '1-2 Pan = Pan sure',
        '3-4 Tilt = Tilt sure',
        '5 Pan/Tilt speed = PositionMSpeed sure',
        '6 Shutter = Shutter1 sure | 0-15 Closed / 16-31 Open / 32-127 Strobe slow→fast [Shutter1Strobe] / 128-191 Pulse strobe [Shutter1StrobePulse] / 192-255 Open [Shutter1]',
        '7-8 Dimmer = Dimmer sure',
        '9 Cyan = ColorSub_C sure',
        '10 Magenta = ColorSub_M sure',
        '11 Yellow = ColorSub_Y sure',
        '12 CTO = CTO sure',
        '13 Colour wheel = Color1 sure | 0-9 White / 10-127 Red, blue, lavender / 128-255 Rotation',
        '14 Gobo wheel 1 = Gobo1 sure',
        '15 Gobo 1 rotation = Gobo1PosRotate sure',
        '16 Prism = Prism1 sure',
        '17 Frost = Frost1 sure',
        '18 Zoom = Zoom sure',
        '19 Focus = Focus1 sure',
        '20 Control = Control1 sure',
      ],
    },
    leftOut: ['1 text'],
  },
  {
    habit: 'numbers and names, nothing else; slots counted from 0',
    text: '0 Dimmer\n1 Red\n2 Green\n3 Blue\n4 Strobe',
    modes: {
      '': [
        '1 Dimmer = Dimmer sure',
        '2 Red = ColorAdd_R sure',
        '3 Green = ColorAdd_G sure',
        '4 Blue = ColorAdd_B sure',
        '5 Strobe = Shutter1Strobe sure',
      ],
    },
    remarks: ['counted-from-0'],
  },
  {
    habit: 'semicolons; an empty cell repeats the channel above',
    text: `Channel;Function;Value;Description
1;Intensity;0-255;0…100 %
2;Strobe;0-9;Off
;;10-255;Slow to fast
3;Red;0-255;
4;Green;0-255;
5;Blue;0-255;
6;Amber;0-255;
7;Lime;0-255;`,
    modes: {
      '': [
        '1 Intensity = Dimmer sure | 0-255 0…100 %',
        '2 Strobe = Shutter1Strobe sure | 0-9 Off / 10-255 Slow to fast',
        '3 Red = ColorAdd_R sure',
        '4 Green = ColorAdd_G sure',
        '5 Blue = ColorAdd_B sure',
        '6 Amber = ColorAdd_RY sure',
        '7 Lime = ColorAdd_GY sure',
      ],
    },
  },
  {
    habit: 'two modes side by side, a column of defaults, Windows line ends',
    text: 'Basic\tExtended\tFunction\tValue\tDefault\tDescription\r\n1\t1\tPan\t0-255\t128\t\r\n-\t2\tPan fine\t0-255\t0\t\r\n2\t3\tTilt\t0-255\t50 %\t\r\n-\t4\tTilt fine\t0-255\t0\t\r\n3\t5\tShutter\t0-31\t32\tClosed\r\n\t\t\t32-255\t\tOpen\r\n4\t6\tDimmer\t0-255\t0\t',
    modes: {
      Basic: [
        '1 Pan = Pan sure 128',
        '2 Tilt = Tilt sure 128',
        '3 Shutter = Shutter1 sure 32 | 0-31 Closed / 32-255 Open',
        '4 Dimmer = Dimmer sure 0',
      ],
      Extended: [
        '1-2 Pan = Pan sure 128/1',
        '3-4 Tilt = Tilt sure 128/1',
        '5 Shutter = Shutter1 sure 32 | 0-31 Closed / 32-255 Open',
        '6 Dimmer = Dimmer sure 0',
      ],
    },
  },
  {
    habit: 'columns of a page, headings and footers again on the next page, a wrapped description',
    text: `Channel   Function        DMX Value   Description
1         Dimmer          000 - 255   0 to 100%
2         Strobe          000 - 005   Off
                          006 - 255   Slow to fast
Marlow & Quist   User manual   12
Channel   Function        DMX Value   Description
3         Colour macros   000 - 010   Off
                          011 - 255   Colours one after the other, the
                                      last one white
4         Zoom            000 - 255
Marlow & Quist   User manual   13`,
    modes: {
      '': [
        '1 Dimmer = Dimmer sure | 0-255 0 to 100%',
        '2 Strobe = Shutter1Strobe sure | 0-5 Off / 6-255 Slow to fast',
        '3 Colour macros = ColorMacro1 sure | 0-10 Off / 11-255 Colours one after the other, the last one white',
        '4 Zoom = Zoom sure',
      ],
    },
    leftOut: ['5 page', '11 page'],
  },
  {
    habit: 'several charts one after the other, one of which points to another',
    text: `4 CH mode
1 Red
2 Green
3 Blue
4 Dimmer
8 CH mode
1–4: as in 4 CH mode
5 Strobe
6 Macro
7 Speed`,
    modes: {
      '4 CH mode': [
        '1 Red = ColorAdd_R sure',
        '2 Green = ColorAdd_G sure',
        '3 Blue = ColorAdd_B sure',
        '4 Dimmer = Dimmer sure',
      ],
      '8 CH mode': ['5 Strobe = Shutter1Strobe sure', '6 Macro = Effects1 likely', '7 Speed = Speed unknown'],
    },
    leftOut: ['7 elsewhere'],
    remarks: ['footprint-differs 8, 7', 'slots-not-named 1-4'],
  },
  {
    habit: 'German, bars between the columns',
    text: `8-Kanal-Modus
Kanal | Funktion | Wert | Beschreibung
1 | Schwenken | 0–255 |
2 | Neigen | 0–255 |
3 | Helligkeit | 0–255 | 0–100 %
4 | Rot | |
5 | Grün | |
6 | Blau | |
7 | Weiß | |
8 | keine Funktion | |`,
    modes: {
      '8-Kanal-Modus': [
        '1 Schwenken = Pan sure',
        '2 Neigen = Tilt sure',
        '3 Helligkeit = Dimmer sure | 0-255 0–100 %',
        '4 Rot = ColorAdd_R sure',
        '5 Grün = ColorAdd_G sure',
        '6 Blau = ColorAdd_B sure',
        '7 Weiß = ColorAdd_W sure',
        '8 keine Funktion = NoFeature sure',
      ],
    },
  },
  {
    habit: 'French, a colon between slot and name, values with à',
    text: `Voie 1 : Gradateur
Voie 2 : Rouge
Voie 3 : Vert
Voie 4 : Bleu
Voie 5 : Stroboscope
0 à 9 : éteint
10 à 255 : lent → rapide`,
    modes: {
      '': [
        '1 Gradateur = Dimmer sure',
        '2 Rouge = ColorAdd_R sure',
        '3 Vert = ColorAdd_G sure',
        '4 Bleu = ColorAdd_B sure',
        '5 Stroboscope = Shutter1Strobe sure | 0-9 éteint / 10-255 lent → rapide',
      ],
    },
  },
  {
    habit: 'commas with quotes, percent for values',
    text: `Canal,Función,Valor,Descripción
"1,2",Pan,,
3,Intensidad,0-100 %,
4,Iris,0-49 %,"lento, cerrando"
,,50-100 %,abierto
5,Azul,0-255,`,
    modes: {
      '': [
        '1-2 Pan = Pan sure',
        '3 Intensidad = Dimmer sure | 0-255 0-100 %',
        '4 Iris = Iris sure | 0-127 lento, cerrando / 128-255 abierto',
        '5 Azul = ColorAdd_B sure',
      ],
    },
    remarks: ['from-percent 0-49 %, 50-100 %'],
  },
  {
    habit: 'coarse and fine bytes in every way to say it',
    text: `1/2 Pan 16 bit 0-65535
3+4 Tilt (coarse/fine)
5 & 6 Dimmer
7 Zoom MSB
8 Focus MSB
9 Zoom LSB
10 Focus LSB
11 Iris
12 Iris 16-bit
13 Frost
14 fine
15 Prism fine
16+17 Tint
0-32767 Cold
32768-65535 Warm`,
    modes: {
      '': [
        '1-2 Pan = Pan sure',
        '3-4 Tilt = Tilt sure',
        '5-6 Dimmer = Dimmer sure',
        '7, 9 Zoom = Zoom sure',
        '8, 10 Focus = Focus1 sure',
        '11-12 Iris = Iris sure',
        '13-14 Frost = Frost1 sure',
        '15 Prism fine = Prism1 likely',
        '16-17 Tint = Tint sure | 0-127 Cold / 128-255 Warm',
      ],
    },
    remarks: ['fine-alone Prism fine', 'from-16-bit'],
  },
  {
    habit: 'a bar of cells, each with its number',
    text: `1. Master dimmer
2. Red 1
3. Green 1
4. Blue 1
5. Red 2
6. Green 2
7. Blue 2
8. Red 3
9. Green 3
10. Blue 3`,
    modes: {
      '': [
        '1 Master dimmer = Dimmer sure',
        '2 Red 1 = ColorAdd_R sure {1}',
        '3 Green 1 = ColorAdd_G sure {1}',
        '4 Blue 1 = ColorAdd_B sure {1}',
        '5 Red 2 = ColorAdd_R sure {2}',
        '6 Green 2 = ColorAdd_G sure {2}',
        '7 Blue 2 = ColorAdd_B sure {2}',
        '8 Red 3 = ColorAdd_R sure {3}',
        '9 Green 3 = ColorAdd_G sure {3}',
        '10 Blue 3 = ColorAdd_B sure {3}',
        'repeats: 3 rows from row 2, 3 times, step 3',
      ],
    },
  },
  {
    habit: 'several slots in one line',
    text: `1 Dimmer
2-4 RGB
5-10 RGB pixel 1-2
11-12 Pan/Tilt
13-14 Reserved
15-40 Something else`,
    modes: {
      '': [
        '1 Dimmer = Dimmer sure',
        '2 Red = ColorAdd_R likely',
        '3 Green = ColorAdd_G likely',
        '4 Blue = ColorAdd_B likely',
        '5 Red = ColorAdd_R likely {Pixel 1}',
        '6 Green = ColorAdd_G likely {Pixel 1}',
        '7 Blue = ColorAdd_B likely {Pixel 1}',
        '8 Red = ColorAdd_R likely {Pixel 2}',
        '9 Green = ColorAdd_G likely {Pixel 2}',
        '10 Blue = ColorAdd_B likely {Pixel 2}',
        '11 Pan = Pan likely',
        '12 Tilt = Tilt likely',
        '13 Reserved = NoFeature likely',
        '14 Reserved = NoFeature likely',
        'repeats: 3 rows from row 2, 3 times, step 3',
      ],
    },
    leftOut: ['6 too-many-slots'],
    remarks: [
      'slots-not-named 15-40',
      'taken-apart RGB',
      'taken-apart RGB pixel 1-2',
      'taken-apart Pan/Tilt',
      'taken-apart Reserved',
    ],
  },
  {
    habit: 'a spreadsheet copied with line breaks in its cells',
    text: 'Ch\tFunction\tDMX\tMeaning\n1\tShutter\t"0-10\n11-127\n128-255"\t"Closed\nStrobe\nOpen"\n2\t"Colour\nwheel"\t0-255\t',
    modes: {
      '': [
        '1 Shutter = Shutter1 sure | 0-10 Closed / 11-127 Strobe [Shutter1Strobe] / 128-255 Open [Shutter1]',
        '2 Colour wheel = Color1 sure',
      ],
    },
  },
  {
    habit: 'the text of a page whose columns came apart line by line',
    text: `Channel
Function
Value
1
Dimmer
0-255
2
Smoke
0-10
Off
11-255
Little to much`,
    modes: { '': ['1 Dimmer = Dimmer sure', '2 Smoke = Fog1 sure | 0-10 Off / 11-255 Little to much'] },
    leftOut: ['1 text', '2 text', '3 text'],
  },
  {
    habit: 'values one by one, in a list without indents',
    text: `1 Zoom
2 Macros
0 Off
1 Sunrise
2 Sunset
3-255 All in turn
3 Focus`,
    modes: {
      '': [
        '1 Zoom = Zoom sure',
        '2 Macros = Effects1 likely | 0 Off / 1 Sunrise / 2 Sunset / 3-255 All in turn',
        '3 Focus = Focus1 sure',
      ],
    },
  },
  {
    habit: 'Italian, a dash between slot and name, soft hyphens and hard spaces',
    text: 'Canale\u00a01 - Inten\u00adsità\nCanale\u00a02 - Bianco caldo\nCanale\u00a03 - Bianco freddo\nCanale\u00a04 - Ventola',
    modes: {
      '': [
        '1 Intensità = Dimmer sure',
        '2 Bianco caldo = ColorAdd_WW sure',
        '3 Bianco freddo = ColorAdd_CW sure',
        '4 Ventola = Fan1 sure',
      ],
    },
  },
  {
    habit: 'modes under headings with their footprint, columns come apart into single spaces',
    text: `Calluna Wash
DMX Channel Assignments

Mode A (5 channels)
Channel Name Value Function
1 Dimmer 000-255 0 to 100%
2 Red 000-255 0 to 100%
3 Green 000-255 0 to 100%
4 Blue 000-255 0 to 100%
5 Strobe
000-009 Off
010-255 Slow to fast

Mode B (7 channels)
Channel Name Value Function
1-5: identical to mode A
6 Color Temperature 000-255 Warm to cold
7 Auto Programs
000-031 Off
032-255 Fade`,
    modes: {
      'Mode A (5 channels)': [
        '1 Dimmer = Dimmer sure | 0-255 0 to 100%',
        '2 Red = ColorAdd_R sure | 0-255 0 to 100%',
        '3 Green = ColorAdd_G sure | 0-255 0 to 100%',
        '4 Blue = ColorAdd_B sure | 0-255 0 to 100%',
        '5 Strobe = Shutter1Strobe sure | 0-9 Off / 10-255 Slow to fast',
      ],
      'Mode B (7 channels)': [
        '6 Color Temperature = CTC sure | 0-255 Warm to cold',
        '7 Auto Programs = Effects1 likely | 0-31 Off / 32-255 Fade',
      ],
    },
    leftOut: ['1 text', '2 text', '16 elsewhere'],
    remarks: ['slots-not-named 1-5'],
  },
  {
    habit: 'all values of a row in one line, three dots between them',
    text: `DMX 001 Dimmer (0-255)
DMX 002 Shutter 0...10 Closed, 11...200 Strobe, 201...255 Open
DMX 003 Fan mode`,
    modes: {
      '': [
        '1 Dimmer = Dimmer sure',
        '2 Shutter = Shutter1 sure | 0-10 Closed / 11-200 Strobe [Shutter1Strobe] / 201-255 Open [Shutter1]',
        '3 Fan mode = Fan1 likely',
      ],
    },
  },
  {
    habit: 'cells with a strobe each',
    text: '1 Red 1\n2 Strobe 1\n3 Red 2\n4 Strobe 2\n5 Dimmer',
    modes: {
      '': [
        '1 Red 1 = ColorAdd_R sure {1}',
        '2 Strobe 1 = Shutter1Strobe sure {1}',
        '3 Red 2 = ColorAdd_R sure {2}',
        '4 Strobe 2 = Shutter1Strobe sure {2}',
        '5 Dimmer = Dimmer sure',
        'repeats: 2 rows from row 1, 2 times, step 2',
      ],
    },
  },
  {
    habit: 'two breaks, each counted from 1',
    text: `Slot  Name              Break  Default
1     Dimmer            1      0
2     Dimmer fine       1      0
1     Colour wheel      2      50%`,
    modes: { '': ['1-2 Dimmer = Dimmer sure 0/1', '2:1 Colour wheel = Color1 sure 128'] },
  },
  {
    habit: 'attributes in a column of their own',
    text: 'Slot,Name,Attribute,From,To,Meaning\n1,Bright,Dimmer,0,255,\n2,Turn,Pan,0,127,left\n2,Turn,Pan,128,255,right',
    modes: { '': ['1 Bright = Dimmer stated', '2 Turn = Pan stated | 0-127 left / 128-255 right'] },
  },
];
