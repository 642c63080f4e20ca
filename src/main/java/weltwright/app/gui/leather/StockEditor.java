package weltwright.app.gui.leather;

import java.awt.Component;
import java.awt.Dialog;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.locationtech.jts.geom.Envelope;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.error.UserFacingException;
import weltwright.job.JobFields;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;
import weltwright.wording.Messages;

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
        private final JDialog dialog;
        private final FormPanel form = new FormPanel();
        private final WrappedText error = new WrappedText(ThemeColors::error);
        private final ValidatedField<String> name;
        private final ValidatedField<OptionalDouble> length =
                FieldFactory.optionalLength(JobFields.STOCK_LENGTH, mm -> mm);
        private final ValidatedField<OptionalDouble> width =
                FieldFactory.optionalLength(JobFields.STOCK_WIDTH, mm -> mm);
        private final ValidatedField<OptionalDouble> thickness =
                FieldFactory.optionalLength(JobFields.STOCK_THICKNESS, mm -> mm);
        private final ValidatedField<String> kind;
        private final ValidatedField<OptionalDouble> price;
        private final JComboBox<ComboBoxItem<LeatherPrice.Per>> per = new JComboBox<>();

        StockDialog(Optional<ShelvedStock> before) {
            this.before = before;
            dialog = new JDialog(
                    SwingUtilities.getWindowAncestor(parent),
                    messages.text(before.isEmpty() ? "editor.add.title" : "editor.change.title"),
                    Dialog.ModalityType.APPLICATION_MODAL);
            dialog.setName("stock editor");
            name = FieldFactory.text(
                    JobFields.STOCK_NAME, before.map(ShelvedStock::name).orElse(""));
            kind = FieldFactory.text(
                    JobFields.STOCK_KIND, before.map(ShelvedStock::kind).orElse(""));
            price = FieldFactory.optionalNumber(
                    JobFields.PRICE,
                    before.flatMap(ShelvedStock::price)
                            .map(each -> OptionalDouble.of(each.amount().doubleValue()))
                            .orElse(OptionalDouble.empty()));
            StockWording wording = new StockWording(job.unit());
            for (LeatherPrice.Per each : LeatherPrice.Per.values()) {
                per.addItem(new ComboBoxItem<>(each, wording.per(each)));
            }
            per.setName("price per");
            before.flatMap(ShelvedStock::price).ifPresent(each -> ComboBoxItem.select(per, each.per()));
            boolean panel =
                    before.map(item -> StockWording.isPanel(item.stock())).orElse(true);
            row("name", name);
            if (panel) {
                length.withExample(OptionalDouble.of(24 * 25.4));
                width.withExample(OptionalDouble.of(12 * 25.4));
                row("length", length);
                row("width", width);
            }
            row("thickness", thickness);
            row("kind", kind);
            row("price", price);
            form.addRow(messages.text("editor.per"), (char) 0, per, messages.text("editor.per.tip"));
            form.addText(messages.text(panel ? "editor.direction" : "editor.outline"));
            form.setUnit(job.unit());
            before.map(ShelvedStock::stock).ifPresent(stock -> {
                Envelope extent = stock.outline().polygon().getEnvelopeInternal();
                length.setValue(OptionalDouble.of(extent.getWidth()));
                width.setValue(OptionalDouble.of(extent.getHeight()));
                thickness.setValue(stock.thicknessMm());
            });
            error.showText("");
            form.addFullWidth(error);
        }

        private void row(String key, ValidatedField<?> field) {
            form.addRow(messages.text("editor." + key), (char) 0, field, messages.text("editor." + key + ".tip"));
        }

        void open() {
            JButton save = new JButton(messages.text(before.isEmpty() ? "editor.add" : "editor.change"));
            save.setName("save stock");
            save.addActionListener(e -> save());
            JButton cancel = new JButton(messages.text("editor.cancel"));
            cancel.setName("cancel stock");
            cancel.addActionListener(e -> dialog.dispose());
            JPanel content = new JPanel(new MigLayout("insets 0 0 12 0, fill, wrap 1", "[grow,fill]"));
            content.add(form, "w " + WIDTH_PX + "!, push");
            JPanel buttons = new JPanel(new MigLayout("insets 0 16 0 16"));
            buttons.add(new JPanel(), "pushx");
            buttons.add(cancel);
            buttons.add(save);
            content.add(buttons);
            dialog.setContentPane(content);
            dialog.getRootPane().setDefaultButton(save);
            dialog.getRootPane()
                    .getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW)
                    .put(KeyStroke.getKeyStroke("ESCAPE"), "close");
            dialog.getRootPane().getActionMap().put("close", new RunnableAction("close", "", dialog::dispose));
            dialog.pack();
            dialog.setLocationRelativeTo(parent);
            dialog.setVisible(true);
        }

        private void save() {
            if (dialog.getFocusOwner() instanceof JTextField line) {
                line.postActionEvent();
            }
            if (form.refusedField().isPresent()) {
                form.showRefusedField();
                return;
            }
            String missing = missing();
            if (!missing.isEmpty()) {
                show(missing);
                return;
            }
            ShelvedStock item = new ShelvedStock(stock(), kind.value(), price());
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
            dialog.dispose();
            model.read();
            if (before.isEmpty()) {
                addedListener.accept(item.name());
            }
        }

        private void show(String message) {
            error.showText(message);
            dialog.pack();
        }

        private String missing() {
            if (name.value().isBlank()) {
                return messages.text("editor.name.missing");
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
                    .map(stock -> new Stock(name.value(), stock.outline(), stock.flaws(), thickness.value()))
                    .orElseGet(() -> Stock.panel(
                            name.value(),
                            length.value().getAsDouble(),
                            width.value().getAsDouble(),
                            thickness.value()));
        }

        private boolean hasSize(Stock stock) {
            Envelope extent = stock.outline().polygon().getEnvelopeInternal();
            return length.value().equals(OptionalDouble.of(extent.getWidth()))
                    && width.value().equals(OptionalDouble.of(extent.getHeight()));
        }

        private Optional<LeatherPrice> price() {
            return price.value().isEmpty()
                    ? Optional.empty()
                    : Optional.of(new LeatherPrice(
                            BigDecimal.valueOf(price.value().getAsDouble()), ComboBoxItem.selected(per)));
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
