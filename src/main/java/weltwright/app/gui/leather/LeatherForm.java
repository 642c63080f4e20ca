package weltwright.app.gui.leather;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.CuttingPlan;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.layout.OffcutShape;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.StretchRule;
import weltwright.message.Messages;

/** The form of the leather stage: stock, what is cut from it, and what a sheath costs. */
final class LeatherForm extends FormPanel {
    /** Numbers of sheaths that can be chosen; a job from the command line may ask for more. */
    private static final int MOST_OFFERED = 24;

    private final transient Messages messages = Messages.of(LeatherForm.class);
    private final transient LayoutModel model;
    private final transient PriceListModel prices;
    private final transient LeatherActions actions;
    private final JButton saveLayout;
    private final JButton savePages;
    private final JButton saveSvg;
    private final JButton saveDxf;
    private final JComboBox<ComboBoxItem<OffcutShape>> offcut;
    private final JButton cut;
    private final JButton undoCut;
    private final JButton saveQuote;
    private final WrappedText noStock;
    private final WrappedText unreadable = new WrappedText();
    private final WrappedText costText;
    private final CostTable costTable = new CostTable();
    private final transient ShelfModel shelf;
    private final transient DerivedValue<CostInput, SheathCost> cost;
    private transient Optional<SheathCost> known = Optional.empty();
    private transient Optional<CostInput> counted = Optional.empty();

    /**
     * @param addFromPhoto puts leather on the shelf from a photo
     * @param costTasks runs the counting of costs, beside the layout's search
     */
    LeatherForm(
            JobModel job,
            LayoutModel model,
            ShelfModel shelf,
            PriceListModel prices,
            StockEditor editor,
            Runnable addFromPhoto,
            StockCards cards,
            LeatherActions actions,
            TaskQueue costTasks) {
        this.model = model;
        this.shelf = shelf;
        this.prices = prices;
        this.actions = actions;
        saveLayout = button("save layout", "form.save_layout", actions::saveLayout);
        savePages = button("save layout pages", "form.save_pages", actions::savePages);
        saveSvg = button("save layout svg", "form.save_svg", actions::saveSvg);
        saveDxf = button("save layout dxf", "form.save_dxf", actions::saveDxf);
        cut = button("cut this", "form.cut", this::cutThis);
        undoCut = button("undo cut", "form.undo_cut", actions::undoCut);
        saveQuote = button("save quote", "form.save_quote", this::saveTheQuote);
        addHeading(messages.text("form.shelf"));
        noStock = addText(messages.text("form.no_stock"));
        addFullWidth(cards);
        unreadable.setName("unreadable stock");
        addFullWidth(unreadable);
        addFullWidth(button("add panel", "form.add_panel", editor::add));
        addFullWidth(button("add from photo", "form.add_photo", addFromPhoto));
        addHeading(messages.text("form.layout"));
        FormBinding<CuttingPlan> plan = new FormBinding<>(job, Job::cutting, Job::withCutting);
        addSheaths(plan);
        addTurns(plan);
        addGaps(plan.nested(CuttingPlan::spacing, CuttingPlan::withSpacing));
        offcut = ComboBoxItem.create(
                "offcut",
                new ComboBoxItem<>(OffcutShape.STRAIGHT, messages.text("offcut.straight")),
                new ComboBoxItem<>(OffcutShape.RECTANGLE, messages.text("offcut.rectangle")),
                new ComboBoxItem<>(OffcutShape.OUTLINE, messages.text("offcut.outline")));
        addRow(messages.text("form.offcut"), offcut, messages.text("form.offcut.tip"));
        JPanel buttons = new JPanel(new MigLayout("insets 6 0 0 0, fillx, wrap 1, gapy 6, hidemode 3", "[grow,fill]"));
        buttons.add(saveLayout);
        buttons.add(savePages);
        buttons.add(saveSvg, "split 2, sizegroup machine");
        buttons.add(saveDxf, "sizegroup machine");
        buttons.add(cut);
        buttons.add(undoCut);
        addFullWidth(buttons);
        addHeading(messages.text("form.cost"));
        costText = addText("");
        addFullWidth(costTable);
        addFullWidth(saveQuote);
        CollapsibleSection section = addSection(messages.text("form.prices"), new PriceForm(prices));
        cost = new DerivedValue<>(costTasks, messages.text("form.counting"), () -> counted, CostInput::cost, state -> {
            known = state.computing() ? known : state.value();
            update();
        });
        Runnable summary = () -> section.setSummary(messages.text(
                prices.list().isPresent() ? "form.prices.summary" : "form.prices.none",
                prices.all().currency().getCurrencyCode()));
        prices.addListener(summary);
        summary.run();
        model.addListener(this::countAnew);
        countAnew();
    }

    private JButton button(String name, String key, Runnable action) {
        JButton button = new JButton(messages.text(key));
        button.setName(name);
        button.setToolTipText(messages.text(key + ".tip"));
        button.addActionListener(e -> action.run());
        return button;
    }

    private void addSheaths(FormBinding<CuttingPlan> plan) {
        JComboBox<ComboBoxItem<OptionalInt>> count = new JComboBox<>();
        count.addItem(new ComboBoxItem<>(OptionalInt.empty(), messages.text("form.as_many")));
        for (int n = 1; n <= MOST_OFFERED; n++) {
            count.addItem(new ComboBoxItem<>(OptionalInt.of(n), messages.text("form.count", n)));
        }
        count.setName("sheaths");
        addRow(messages.text("form.sheaths"), count, messages.text("form.sheaths.tip"));
        plan.bind(count, CuttingPlan::count, CuttingPlan::withCount);
    }

    private void addTurns(FormBinding<CuttingPlan> plan) {
        JComboBox<ComboBoxItem<StretchRule>> turns = ComboBoxItem.create(
                "turns",
                new ComboBoxItem<>(StretchRule.NEARLY_ALONG, messages.text("turns.nearly_along")),
                new ComboBoxItem<>(StretchRule.ALONG, messages.text("turns.along")),
                new ComboBoxItem<>(StretchRule.ANY, messages.text("turns.any")));
        addRow(messages.text("form.turns"), turns, messages.text("form.turns.tip"));
        plan.bind(turns, CuttingPlan::turns, CuttingPlan::withTurns);
    }

    private void addGaps(FormBinding<Spacing> spacing) {
        ValidatedField<Double> gap = FieldFactory.lengthOnCommit(JobFields.GAP, Spacing.USUAL.betweenMm());
        addRow(messages.text("form.gap"), gap, messages.text("form.gap.tip"));
        spacing.bind(gap, Spacing::betweenMm, (both, mm) -> new Spacing(mm, both.edgeMm()));
        ValidatedField<Double> edge = FieldFactory.lengthOnCommit(JobFields.EDGE_GAP, Spacing.USUAL.edgeMm());
        addRow(messages.text("form.edge"), edge, messages.text("form.edge.tip"));
        spacing.bind(edge, Spacing::edgeMm, (both, mm) -> new Spacing(both.betweenMm(), mm));
    }

    private void countAnew() {
        counted = CostInput.of(model, prices);
        cost.update();
        update();
    }

    private void update() {
        LayoutModel.Phase phase = model.phase();
        boolean laidOut = !model.layouts().isEmpty();
        boolean wasCut = phase == LayoutModel.Phase.CUT;
        noStock.setVisible(shelf.items().isEmpty());
        String files = shelf.unreadable().stream()
                .map(file -> messages.text("form.unreadable", file))
                .collect(Collectors.joining("\n"));
        unreadable.showText(files);
        saveLayout.setEnabled(laidOut);
        savePages.setEnabled(laidOut);
        saveSvg.setEnabled(laidOut);
        saveDxf.setEnabled(laidOut);
        cut.setVisible(!wasCut);
        cut.setEnabled(laidOut && phase != LayoutModel.Phase.SEARCHING);
        undoCut.setVisible(wasCut);
        boolean shown = counted.isPresent() && known.isPresent();
        costTable.show(shown ? known : Optional.empty());
        saveQuote.setEnabled(shown);
        costText.showText(costText(laidOut, shown));
    }

    private String costText(boolean laidOut, boolean shown) {
        if (shown) {
            return "";
        }
        if (!laidOut) {
            return messages.text("form.cost.none");
        }
        return counted.isEmpty() ? messages.text("form.cost.no_prices") : messages.text("form.counting");
    }

    private void cutThis() {
        actions.cut(ComboBoxItem.selected(offcut));
    }

    private void saveTheQuote() {
        if (counted.isPresent() && known.isPresent()) {
            actions.saveQuote(counted.get().pattern(), known.get());
        }
    }
}
