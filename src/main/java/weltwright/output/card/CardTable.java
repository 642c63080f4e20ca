package weltwright.output.card;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import weltwright.output.card.CardRow.Column;
import weltwright.output.card.CardRow.Kind;
import weltwright.output.pdf.PdfTypeface;

/**
 * A table of the bench card: a row for each item, and in each column one of its values.
 *
 * @param <T> type of the items
 */
final class CardTable<T> {
    private final PdfTypeface typeface;
    private final double cardWidthMm;
    private final List<Column> columns = new ArrayList<>();
    private final List<Function<T, String>> values = new ArrayList<>();

    CardTable(PdfTypeface typeface, double cardWidthMm) {
        this.typeface = typeface;
        this.cardWidthMm = cardWidthMm;
    }

    /** Adds a column of text, as wide as a fraction of the card. */
    CardTable<T> text(String name, double fraction, Function<T, String> value) {
        return add(Column.text(name, fraction * cardWidthMm), value);
    }

    /** Adds a column of numbers, as wide as a fraction of the card. */
    CardTable<T> numeric(String name, double fraction, Function<T, String> value) {
        return add(Column.numeric(name, fraction * cardWidthMm), value);
    }

    private CardTable<T> add(Column column, Function<T, String> value) {
        columns.add(column);
        values.add(value);
        return this;
    }

    double widthMm() {
        return columns.stream().mapToDouble(Column::widthMm).sum();
    }

    CardRow head() {
        return CardRow.head(typeface, columns);
    }

    CardRow row(T item, Kind kind) {
        return CardRow.of(
                typeface,
                columns,
                values.stream().map(value -> value.apply(item)).toList(),
                kind);
    }

    List<CardRow> rows(List<T> items) {
        return items.stream().map(item -> row(item, Kind.PLAIN)).toList();
    }
}
