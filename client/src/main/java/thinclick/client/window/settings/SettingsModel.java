package thinclick.client.window.settings;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.SystemLook;
import thinclick.client.window.words.Language;

/** What can be set about the window: its look now, and the colours that this comes to. */
public final class SettingsModel {
  private final ReadOnlyObjectWrapper<Look> look;
  private final ReadOnlyObjectWrapper<Palette> palette;
  private final ReadOnlyObjectWrapper<Language> language;
  private SystemLook system = SystemLook.USUAL;

  public SettingsModel(Settings remembered) {
    look = new ReadOnlyObjectWrapper<>(remembered.look());
    palette = new ReadOnlyObjectWrapper<>(remembered.look().palette(system));
    language = new ReadOnlyObjectWrapper<>(remembered.speaks());
  }

  /** The language that the window is to speak from its next start on. */
  public ReadOnlyObjectProperty<Language> languageProperty() {
    return language.getReadOnlyProperty();
  }

  /** Sets the language of the next start. */
  public void set(Language wanted) {
    language.set(wanted);
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
