package thinclick.protocol.invite;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.regex.Pattern;
import thinclick.protocol.json.BadInput;

/**
 * The SHA-256 of a host's certificate (its DER encoding), by which a client knows the host again.
 *
 * @param text base64url (RFC 4648, section 5) without padding: 43 characters
 */
public record Fingerprint(String text) {
  private static final Pattern FORM = Pattern.compile("[A-Za-z0-9_-]{43}");
  private static final int SAID_BYTES = 8;

  public Fingerprint {
    if (!FORM.matcher(text).matches() || !canonical(text)) {
      throw new BadInput("pin", "expected 43 letters of base64url, found \"" + text + "\"");
    }
  }

  /** The 43rd letter carries four bits; with others set two texts would mean one fingerprint. */
  private static boolean canonical(String text) {
    byte[] bytes = Base64.getUrlDecoder().decode(text);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes).equals(text);
  }

  /** Of a certificate in its DER encoding. */
  public static Fingerprint of(byte[] certificate) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(certificate);
      return new Fingerprint(Base64.getUrlEncoder().withoutPadding().encodeToString(digest));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible); // every Java has SHA-256
    }
  }

  /**
   * The first 64 bits for two people to compare aloud or by eye: {@code 3f9c-07ab-12de-88a1}. For
   * eyes only; a program compares the whole.
   */
  public String said() {
    String hex = HexFormat.of().formatHex(Base64.getUrlDecoder().decode(text), 0, SAID_BYTES);
    return hex.replaceAll("(.{4})(?=.)", "$1-");
  }

  @Override
  public String toString() {
    return text;
  }
}
