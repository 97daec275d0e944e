package thinclick.server.room;

import thinclick.protocol.file.Part;

/** Parts with what only the room knows of their players. */
final class Parts {
  private Parts() {}

  static Part with(Part part, double uncertaintyMillis, boolean standIn) {
    return new Part(
        part.player(),
        part.entryStep(),
        uncertaintyMillis,
        part.attackSteps(),
        part.accentSteps(),
        part.lengthSteps(),
        part.pitches(),
        part.feelMillis(),
        part.role(),
        part.weight(),
        part.instrument(),
        standIn,
        part.away(),
        part.hearing());
  }
}
