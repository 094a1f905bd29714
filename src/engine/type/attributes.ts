/** What the standard says of an attribute name. */
export interface AttributeFacts {
  /** Feature group and feature. */
  readonly feature: string;
  readonly unit: 'None' | 'Angle' | 'ColorComponent' | 'Frequency' | 'Length' | 'Temperature';
}

/**
 * Facts of a GDTF attribute name, upper and lower case alike; undefined for a name that is none of the standard's, which is
 * kept all the same. Source: GDTF (DIN SPEC 15800), Annex B, extract.
 */
export function attributeFacts(attribute: string): AttributeFacts | undefined {
  const row = ROWS.find(([, , pattern]) => pattern.test(attribute));
  return row === undefined ? undefined : { feature: row[0], unit: row[1] };
}

const HAZARD_PATTERNS = {
  strobe: /^(Shutter\d*Strobe\w*|Strobe\w*|IrisStrobe\w*|ColorStrobe\w*)$/i,
  ultraviolet: /^ColorAdd_UV$/i,
  movingParts: /^(Pan|Tilt|PanRotate|TiltRotate|PositionEffect|XYZ_[XYZ]|Rot_[XYZ])$/i,
  fog: /^(Fog|Haze)\d*$/i,
} as const;

/** The hazards that an attribute gives away; heat does not show in slots. */
export function hazardsOfAttribute(attribute: string): readonly (keyof typeof HAZARD_PATTERNS)[] {
  const kinds = Object.keys(HAZARD_PATTERNS) as (keyof typeof HAZARD_PATTERNS)[];
  return kinds.filter((kind) => HAZARD_PATTERNS[kind].test(attribute));
}

type Row = readonly [feature: string, unit: AttributeFacts['unit'], pattern: RegExp];

const row = (feature: string, unit: AttributeFacts['unit'], names: string): Row => [
  feature,
  unit,
  new RegExp(`^(?:${names})$`, 'i'),
];

// `\d*` stands for the standard's counters (n) and (m), which count from 1.
const ROWS: readonly Row[] = [
  row('Dimmer.Dimmer', 'None', 'Dimmer'),
  row('Position.PanTilt', 'Angle', 'Pan|Tilt'),
  row('Position.PanTilt', 'None', '(Pan|Tilt)Rotate|PositionEffect(Rate|Fade)?'),
  row('Position.XYZ', 'Length', 'XYZ_[XYZ]'),
  row('Rotation.Rotation', 'Angle', 'Rot_[XYZ]'),
  row('Scale.Scale', 'None', 'Scale_([XYZ]|XYZ)'),
  row('Gobo.Gobo', 'None', 'Gobo\\d*(Pos\\w*|Select\\w*|Wheel\\w*)?|Animation(Wheel|System)\\d*\\w*'),
  row('Gobo.Media', 'None', '(Media|Model)(Folder|Content)\\d*|Play(mode|Begin|End|Speed)'),
  row('Color.Color', 'Temperature', 'CTO|CTC|CTB'),
  row('Color.Color', 'None', 'Color\\d*|Color\\d*Wheel(Index|Spin|Random|Audio)|ColorEffects\\d*|Tint'),
  row('Color.RGB', 'ColorComponent', 'ColorAdd_(R|G|B|C|M|Y|RY|GY|GC|BC|BM|RM|W|WW|CW|UV)|ColorSub_[RGBCMY]'),
  row('Color.RGB', 'None', 'ColorMacro\\d*(Rate)?'),
  row('Color.HSB', 'None', 'HSB_(Hue|Saturation|Brightness|Quality)'),
  row('Color.CIE', 'None', 'CIE_(X|Y|Brightness)'),
  row('Color.Indirect', 'None', 'ColorRGB_\\w+'),
  row('Beam.Beam', 'Frequency', 'Shutter\\d*Strobe\\w*|StrobeFrequency'),
  row(
    'Beam.Beam',
    'None',
    'Shutter\\d*|Strobe\\w*|Iris\\w*|Frost\\d*\\w*|Prism\\d*\\w*|Effects\\d*\\w*|BeamShaper\\w*',
  ),
  row('Focus.Focus', 'Angle', 'Zoom'),
  row('Focus.Focus', 'None', 'Zoom\\w+|DigitalZoom|Focus\\d*(Adjust|Distance)?'),
  row('Shapers.Shapers', 'None', 'Blade\\d*(A|B|Rot)|Shaper\\w+|BladeSoft\\d*[AB]|KeyStone\\d*[AB]'),
  row('Video.Video', 'None', 'Video\\w*|FieldOfView|InputSource'),
  row('Control.Control', 'None', 'Control\\d*|Function|NoFeature|Lamp\\w+|Fixture\\w*Reset|DimmerMode|DimmerCurve'),
  row('Control.Control', 'None', '(Pan|Tilt)Mode|PositionMSpeed|Fan\\d*\\w*|(Fog|Haze|Blower)\\d*'),
];
