package weltwright.app.gui.form;

import java.util.Locale;
import java.util.stream.IntStream;
import javax.swing.JComboBox;

/**
 * A value and how it reads in a list.
 *
 * @param words what the user sees
 */
public record ComboBoxItem<T>(T value, String words) {

    /** A list to choose from. */
    @SafeVarargs
    public static <T> JComboBox<ComboBoxItem<T>> box(String name, ComboBoxItem<T>... choices) {
        JComboBox<ComboBoxItem<T>> box = new JComboBox<>();
        for (ComboBoxItem<T> choice : choices) {
            box.addItem(choice);
        }
        box.setName(name);
        return box;
    }

    /** How a value reads among the choices of a list. */
    static <T> String words(JComboBox<ComboBoxItem<T>> box, T value) {
        return IntStream.range(0, box.getItemCount())
                .mapToObj(box::getItemAt)
                .filter(choice -> choice.value().equals(value))
                .findFirst()
                .map(ComboBoxItem::words)
                .orElse(value.toString());
    }

    /** How a value reads among the choices of a list, for the middle of a sentence. */
    public static <T> String lowerCaseWords(JComboBox<ComboBoxItem<T>> box, T value) {
        String words = words(box, value);
        return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    public static <T> T chosen(JComboBox<ComboBoxItem<T>> box) {
        return box.getItemAt(box.getSelectedIndex()).value();
    }

    /** Shows a value; one from a file that is not among the choices is added to them. */
    public static <T> void choose(JComboBox<ComboBoxItem<T>> box, T value) {
        int index = IntStream.range(0, box.getItemCount())
                .filter(i -> box.getItemAt(i).value().equals(value))
                .findFirst()
                .orElseGet(() -> {
                    box.addItem(new ComboBoxItem<>(value, value.toString()));
                    return box.getItemCount() - 1;
                });
        if (index != box.getSelectedIndex()) {
            box.setSelectedIndex(index);
        }
    }

    @Override
    public String toString() {
        return words;
    }
}
