package weltwright.app.gui.leather;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.job.JobFields;
import weltwright.job.ShelvedStock;
import weltwright.layout.cost.LeatherPrice;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;

/** The rows of a form for what the maker tells of stock besides its outline: name, thickness, kind and price. */
final class StockFields {
    private final Messages messages = Messages.of(StockFields.class);
    private final FormPanel form;
    private final ValidatedField<String> name;
    private final ValidatedField<OptionalDouble> thickness =
            FieldFactory.optionalLength(JobFields.STOCK_THICKNESS, mm -> mm);
    private final ValidatedField<String> kind;
    private final ValidatedField<OptionalDouble> price;
    private final JComboBox<ComboBoxItem<LeatherPrice.Per>> per = new JComboBox<>();

    /** @param before what is on the shelf already; empty for new stock */
    StockFields(FormPanel form, MeasureUnit unit, Optional<ShelvedStock> before) {
        this.form = form;
        name = FieldFactory.text(
                JobFields.STOCK_NAME, before.map(ShelvedStock::name).orElse(""));
        kind = FieldFactory.text(
                JobFields.STOCK_KIND, before.map(ShelvedStock::kind).orElse(""));
        price = FieldFactory.optionalNumber(
                JobFields.PRICE,
                before.flatMap(ShelvedStock::price)
                        .map(each -> OptionalDouble.of(each.amount().doubleValue()))
                        .orElse(OptionalDouble.empty()));
        StockWording wording = new StockWording(unit);
        for (LeatherPrice.Per each : LeatherPrice.Per.values()) {
            per.addItem(new ComboBoxItem<>(each, wording.per(each)));
        }
        per.setName("price per");
        before.flatMap(ShelvedStock::price).ifPresent(each -> ComboBoxItem.select(per, each.per()));
        before.ifPresent(item -> thickness.setValue(item.stock().thicknessMm()));
    }

    void addName() {
        row("name", name);
    }

    /** Adds thickness, kind and price. */
    void addOthers() {
        row("thickness", thickness);
        row("kind", kind);
        row("price", price);
        form.addRow(messages.text("editor.per"), per, messages.text("editor.per.tip"));
    }

    private void row(String key, ValidatedField<?> field) {
        form.addRow(messages.text("editor." + key), field, messages.text("editor." + key + ".tip"));
    }

    void onThickness(Runnable listener) {
        thickness.onCommit(listener);
    }

    /** Why the stock cannot be kept yet; empty where it can. */
    String missing() {
        return name.value().isBlank() ? messages.text("editor.name.missing") : "";
    }

    String name() {
        return name.value();
    }

    OptionalDouble thicknessMm() {
        return thickness.value();
    }

    String kind() {
        return kind.value();
    }

    Optional<LeatherPrice> price() {
        return price.value().isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new LeatherPrice(BigDecimal.valueOf(price.value().getAsDouble()), ComboBoxItem.selected(per)));
    }
}
