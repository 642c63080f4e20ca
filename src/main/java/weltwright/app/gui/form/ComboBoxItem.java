package weltwright.app.gui.form;

import java.util.Locale;
import java.util.stream.IntStream;
import javax.swing.JComboBox;
import weltwright.message.Language;

/** An item of a combo box: a value and its label. */
public record ComboBoxItem<T>(T value, String label) {

    /** Creates a combo box with a component name and items. */
    @SafeVarargs
    public static <T> JComboBox<ComboBoxItem<T>> create(String name, ComboBoxItem<T>... items) {
        JComboBox<ComboBoxItem<T>> box = new JComboBox<>();
        for (ComboBoxItem<T> item : items) {
            box.addItem(item);
        }
        box.setName(name);
        return box;
    }

    /** Returns the label of a value; its {@code toString} where the combo box has no such item. */
    static <T> String labelOf(JComboBox<ComboBoxItem<T>> box, T value) {
        return IntStream.range(0, box.getItemCount())
                .mapToObj(box::getItemAt)
                .filter(item -> item.value().equals(value))
                .findFirst()
                .map(ComboBoxItem::label)
                .orElse(value.toString());
    }

    /** Returns the label with a lower-case first letter. */
    String lowerCaseLabel() {
        return lowerCase(label);
    }

    private static String lowerCase(String label) {
        return Language.current() == Language.GERMAN // its nouns have capitals
                ? label
                : label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1);
    }

    /** Returns the value of the selected item. */
    public static <T> T selected(JComboBox<ComboBoxItem<T>> box) {
        return box.getItemAt(box.getSelectedIndex()).value();
    }

    /** Selects the item of a value; adds one where there is none, such as for a value from a file. */
    public static <T> void select(JComboBox<ComboBoxItem<T>> box, T value) {
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
        return label;
    }
}
