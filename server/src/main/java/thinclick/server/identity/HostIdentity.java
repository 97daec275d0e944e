package thinclick.server.identity;

import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.util.List;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.json.BadInput;

/**
 * What a host proves itself by.
 *
 * @param key belongs to the first certificate
 * @param chain the host's certificate, then those that vouch for it
 */
public record HostIdentity(PrivateKey key, List<X509Certificate> chain) {
  private static final byte[] PROBE = {1, 2, 3, 4, 5, 6, 7, 8};

  public HostIdentity {
    chain = List.copyOf(chain);
  }

  /** The one kept in this file, made there where it is missing. */
  public static HostIdentity selfMade(Path file) {
    return SelfMade.readOrMake(file);
  }

  /**
   * The operator's own, from PEM files.
   *
   * @param certificate the host's certificate first
   * @param key not encrypted; may be the same file
   * @throws BadInput where a file cannot be read or they do not belong together
   */
  public static HostIdentity own(Path certificate, Path key) {
    HostIdentity read =
        new HostIdentity(
            PemFile.read("--certificate-key", key).key("--certificate-key", key),
            PemFile.read("--certificate", certificate).chain("--certificate", certificate));
    if (!read.belongTogether()) {
      throw new BadInput(
          "--certificate-key",
          "expected the key of " + certificate + ", found another's in " + key);
    }
    return read;
  }

  private boolean belongTogether() {
    String with =
        switch (key.getAlgorithm()) {
          case "EC" -> "SHA256withECDSA";
          case "RSA" -> "SHA256withRSA";
          default -> key.getAlgorithm();
        };
    try {
      Signature signing = Signature.getInstance(with);
      signing.initSign(key);
      signing.update(PROBE);
      byte[] signed = signing.sign();
      Signature checking = Signature.getInstance(with);
      checking.initVerify(chain.get(0).getPublicKey());
      checking.update(PROBE);
      return checking.verify(signed);
    } catch (GeneralSecurityException unlike) {
      return false;
    }
  }

  /** By which clients know it again. */
  public Fingerprint fingerprint() {
    try {
      return Fingerprint.of(chain.get(0).getEncoded());
    } catch (CertificateEncodingException impossible) {
      throw new IllegalStateException(impossible); // it was read from its encoding
    }
  }
}
