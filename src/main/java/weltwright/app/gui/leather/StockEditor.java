package weltwright.app.gui.leather;

import java.awt.Component;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.locationtech.jts.geom.Envelope;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.error.UserFacingException;
import weltwright.job.JobFields;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;

/** Puts panels on the shelf and changes stock on it, in a dialog. */
final class StockEditor {
    private static final int WIDTH_PX = 380;

    private final Component parent;
    private final JobModel job;
    private final StockShelf shelf;
    private final ShelfModel model;
    private final Consumer<String> addedListener;

    /** @param addedListener receives the name of each panel that was put on the shelf */
    StockEditor(Component parent, JobModel job, StockShelf shelf, ShelfModel model, Consumer<String> addedListener) {
        this.parent = parent;
        this.job = job;
        this.shelf = shelf;
        this.model = model;
        this.addedListener = addedListener;
    }

    /** Asks for a panel and puts it on the shelf. */
    void add() {
        new StockDialog(Optional.empty()).open();
    }

    /** Has the maker change stock. */
    void edit(ShelvedStock item) {
        new StockDialog(Optional.of(item)).open();
    }

    private final class StockDialog {
        private final Messages messages = Messages.of(StockEditor.class);
        private final Optional<ShelvedStock> before;
        private final ShelfDialog dialog;
        private final FormPanel form = new FormPanel();
        private final StockFields fields;
        private final WrappedText error = new WrappedText(ThemeColors::error);
        private final ValidatedField<OptionalDouble> length =
                FieldFactory.optionalLength(JobFields.STOCK_LENGTH, mm -> mm);
        private final ValidatedField<OptionalDouble> width =
                FieldFactory.optionalLength(JobFields.STOCK_WIDTH, mm -> mm);

        StockDialog(Optional<ShelvedStock> before) {
            this.before = before;
            dialog = new ShelfDialog(
                    parent,
                    messages.text(before.isEmpty() ? "editor.add.title" : "editor.change.title"),
                    "stock editor",
                    messages.text(before.isEmpty() ? "editor.add" : "editor.change"));
            fields = new StockFields(form, job.unit(), before);
            boolean panel =
                    before.map(item -> StockWording.isPanel(item.stock())).orElse(true);
            fields.addName();
            if (panel) {
                length.withExample(OptionalDouble.of(24 * 25.4));
                width.withExample(OptionalDouble.of(12 * 25.4));
                row("length", length);
                row("width", width);
            }
            fields.addOthers();
            form.addText(messages.text(panel ? "editor.direction" : "editor.outline"));
            form.setUnit(job.unit());
            before.map(ShelvedStock::stock).ifPresent(stock -> {
                Envelope extent = stock.outline().polygon().getEnvelopeInternal();
                length.setValue(OptionalDouble.of(extent.getWidth()));
                width.setValue(OptionalDouble.of(extent.getHeight()));
            });
            error.showText("");
            form.addFullWidth(error);
        }

        private void row(String key, ValidatedField<?> field) {
            form.addRow(messages.text("editor." + key), field, messages.text("editor." + key + ".tip"));
        }

        void open() {
            JPanel body = new JPanel(new MigLayout("insets 0, fill"));
            body.add(form, "w " + WIDTH_PX + "!, push");
            dialog.open(body, parent, this::save);
        }

        private void save() {
            if (!dialog.commit(form)) {
                return;
            }
            String missing = missing();
            if (!missing.isEmpty()) {
                show(missing);
                return;
            }
            ShelvedStock item = new ShelvedStock(stock(), fields.kind(), fields.price());
            try {
                if (before.isPresent()) {
                    shelf.replace(before.get().name(), item);
                    rename(before.get().name(), item.name());
                } else {
                    shelf.add(item);
                }
            } catch (UserFacingException e) {
                show(e.getMessage());
                return;
            }
            dialog.close();
            model.read();
            if (before.isEmpty()) {
                addedListener.accept(item.name());
            }
        }

        private void show(String message) {
            error.showText(message);
            dialog.window().pack();
        }

        private String missing() {
            if (!fields.missing().isEmpty()) {
                return fields.missing();
            }
            return stockBefore().filter(stock -> !StockWording.isPanel(stock)).isEmpty()
                            && (length.value().isEmpty() || width.value().isEmpty())
                    ? messages.text("editor.size.missing")
                    : "";
        }

        private Optional<Stock> stockBefore() {
            return before.map(ShelvedStock::stock);
        }

        private Stock stock() {
            return stockBefore()
                    .filter(stock -> !StockWording.isPanel(stock) || hasSize(stock))
                    .map(stock -> new Stock(
                            fields.name(), stock.outline(), stock.flaws(), stock.poorer(), fields.thicknessMm()))
                    .orElseGet(() -> Stock.panel(
                            fields.name(),
                            length.value().getAsDouble(),
                            width.value().getAsDouble(),
                            fields.thicknessMm()));
        }

        private boolean hasSize(Stock stock) {
            Envelope extent = stock.outline().polygon().getEnvelopeInternal();
            return length.value().equals(OptionalDouble.of(extent.getWidth()))
                    && width.value().equals(OptionalDouble.of(extent.getHeight()));
        }

        /** The present job keeps its stock under the new name. */
        private void rename(String from, String to) {
            job.change(now -> now.withCutting(now.cutting()
                    .withStocks(now.cutting().stocks().stream()
                            .map(each -> each.equals(from) ? to : each)
                            .toList())));
        }
    }
}
