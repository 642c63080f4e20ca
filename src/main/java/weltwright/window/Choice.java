package weltwright.window;

import java.util.Locale;
import java.util.stream.IntStream;
import javax.swing.JComboBox;

/**
 * A value and how it reads in a list.
 *
 * @param words what the user sees
 */
record Choice<T>(T value, String words) {

    /** A list to choose from. */
    @SafeVarargs
    static <T> JComboBox<Choice<T>> box(String name, Choice<T>... choices) {
        JComboBox<Choice<T>> box = new JComboBox<>();
        for (Choice<T> choice : choices) {
            box.addItem(choice);
        }
        box.setName(name);
        return box;
    }

    /** How a value reads among the choices of a list. */
    static <T> String words(JComboBox<Choice<T>> box, T value) {
        return IntStream.range(0, box.getItemCount())
                .mapToObj(box::getItemAt)
                .filter(choice -> choice.value().equals(value))
                .findFirst()
                .map(Choice::words)
                .orElse(value.toString());
    }

    /** How a value reads among the choices of a list, for the middle of a sentence. */
    static <T> String lowerCaseWords(JComboBox<Choice<T>> box, T value) {
        String words = words(box, value);
        return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
    }

    static <T> T chosen(JComboBox<Choice<T>> box) {
        return box.getItemAt(box.getSelectedIndex()).value();
    }

    /** Shows a value; one from a file that is not among the choices is added to them. */
    static <T> void choose(JComboBox<Choice<T>> box, T value) {
        int index = IntStream.range(0, box.getItemCount())
                .filter(i -> box.getItemAt(i).value().equals(value))
                .findFirst()
                .orElseGet(() -> {
                    box.addItem(new Choice<>(value, value.toString()));
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
