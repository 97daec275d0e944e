package thinclick.server.identity;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.PrivateKey;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;
import org.bouncycastle.asn1.pkcs.PrivateKeyInfo;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.openssl.PEMEncryptedKeyPair;
import org.bouncycastle.openssl.PEMException;
import org.bouncycastle.openssl.PEMKeyPair;
import org.bouncycastle.openssl.PEMParser;
import org.bouncycastle.openssl.jcajce.JcaPEMKeyConverter;
import org.bouncycastle.pkcs.PKCS8EncryptedPrivateKeyInfo;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;

/** What stands in a PEM file (RFC 7468): certificates in their order, and the first key. */
final class PemFile {
  private final List<X509Certificate> certificates = new ArrayList<>();
  private @Nullable PrivateKeyInfo key;
  private boolean keyIsEncrypted;

  private PemFile() {}

  /**
   * Reads it.
   *
   * @param option what a complaint is said of
   */
  static PemFile read(String option, Path file) {
    PemFile read = new PemFile();
    try (Reader text = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1);
        PEMParser parser = new PEMParser(text)) {
      for (Object each = parser.readObject(); each != null; each = parser.readObject()) {
        read.take(each);
      }
      return read;
    } catch (NoSuchFileException missing) {
      throw new BadInput(option, "expected a PEM file, found none at " + file);
    } catch (IOException | CertificateException unreadable) {
      throw new BadInput(
          option, "expected a PEM file, found " + file + ": " + unreadable.getMessage());
    }
  }

  private void take(Object part) throws CertificateException {
    if (part instanceof X509CertificateHolder certificate) {
      certificates.add(new JcaX509CertificateConverter().getCertificate(certificate));
    } else if (part instanceof PrivateKeyInfo info && key == null) {
      key = info;
    } else if (part instanceof PEMKeyPair pair && key == null) {
      key = pair.getPrivateKeyInfo();
    } else if (part instanceof PKCS8EncryptedPrivateKeyInfo
        || part instanceof PEMEncryptedKeyPair) {
      keyIsEncrypted = true;
    }
  }

  List<X509Certificate> chain(String option, Path file) {
    if (certificates.isEmpty()) {
      throw new BadInput(option, "expected a certificate in " + file + ", found none");
    }
    return certificates;
  }

  PrivateKey key(String option, Path file) {
    PrivateKeyInfo found = key;
    if (found == null) {
      throw new BadInput(
          option,
          "expected a private key without a password in "
              + file
              + ", found "
              + (keyIsEncrypted ? "one with a password" : "none"));
    }
    try {
      return new JcaPEMKeyConverter().getPrivateKey(found);
    } catch (PEMException unusable) {
      throw new BadInput(
          option, "expected an EC or RSA key in " + file + ": " + unusable.getMessage());
    }
  }
}
