package thinclick.server.room;

/** The parts of a room that follow messages, each with one matter of its own. */
record RoomParts(
    Telling telling,
    Entrance entrance,
    Leading leading,
    DealTable table,
    TakeDesk desk,
    Playing playing,
    Unwritten unwritten,
    TakeSharing sharing,
    Recalling recalling,
    Renaming renaming) {}
