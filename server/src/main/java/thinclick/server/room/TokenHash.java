package thinclick.server.room;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/** Tokens are kept only as their hash; 128 random bits need neither salt nor stretching. */
final class TokenHash {
  private TokenHash() {}

  static String of(String token) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(token.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException never) {
      throw new IllegalStateException("every Java has SHA-256", never);
    }
  }

  static boolean matches(@Nullable String hash, String token) {
    return hash != null
        && MessageDigest.isEqual(
            hash.getBytes(StandardCharsets.US_ASCII),
            of(token).getBytes(StandardCharsets.US_ASCII));
  }
}
