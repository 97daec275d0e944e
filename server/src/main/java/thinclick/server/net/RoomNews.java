package thinclick.server.net;

/** What an operator is told of rooms; may be called from several threads at once. */
public interface RoomNews {
  /** Nobody is told. */
  RoomNews NONE =
      new RoomNews() {
        @Override
        public void called(String roomId, String word) {}

        @Override
        public void over(String roomId) {}
      };

  /** A room has opened, was brought back, or has another word. */
  void called(String roomId, String word);

  /** A room is over here. */
  void over(String roomId);
}
