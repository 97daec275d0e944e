package thinclick.client.window.settings;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.SystemLook;

/** What can be set about the window: its look now, and the colours that this comes to. */
public final class SettingsModel {
  private final ReadOnlyObjectWrapper<Look> look;
  private final ReadOnlyObjectWrapper<Palette> palette;
  private SystemLook system = SystemLook.USUAL;

  public SettingsModel(Look remembered) {
    look = new ReadOnlyObjectWrapper<>(remembered);
    palette = new ReadOnlyObjectWrapper<>(remembered.palette(system));
  }

  /** How the window is to look. */
  public ReadOnlyObjectProperty<Look> lookProperty() {
    return look.getReadOnlyProperty();
  }

  /** The colours that this comes to. */
  public ReadOnlyObjectProperty<Palette> paletteProperty() {
    return palette.getReadOnlyProperty();
  }

  /** Sets the look. */
  public void set(Look wanted) {
    palette.set(wanted.palette(system));
    look.set(wanted);
  }

  /** What the system says, once it has been asked. */
  public void systemSays(SystemLook now) {
    system = now;
    set(look.get());
  }

  /** From light to dark paper or back, whatever the system says. */
  public void turn() {
    set(look.get().with(palette.get().dark() ? Shade.LIGHT : Shade.DARK));
  }

  /** Larger text and music by so many pixels; smaller where negative. */
  public void grow(double pixels) {
    set(look.get().withText(look.get().textSize() + pixels));
  }
}
