/** What goes with every figure about wires: design section 5, and what the trade takes for granted. */
export const CAUTIONS: readonly string[] = [
  "Extra-low voltage only. The mains side, transformers and earthing belong to a qualified person, under the rules that hold where the railway is.",
  "Never join the outputs of two supplies, nor an analog controller and a supply: gap both rails where their track meets.",
  "What switches a section between two of them breaks before it makes.",
  "Everyone in the room knows the one switch that stops all traction supplies.",
  "A breaker that trips for no reason one knows is never cured by one that trips at more.",
  "These are figures from what was written down. The planner advises and certifies nothing: a measurement beats it.",
];
