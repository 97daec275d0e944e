package thinclick.protocol.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** A file beside the tests. */
final class Resource {
  private Resource() {}

  static byte[] bytes(String path) {
    try (InputStream in = Resource.class.getResourceAsStream(path)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String text(String path) {
    return new String(bytes(path), StandardCharsets.UTF_8);
  }
}
