package weltwright.app.gui.leather;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.job.JobFields;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.cost.PriceList;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;
import weltwright.units.NumberField;

/** The maker's own prices. Those of single kinds of hardware are changed in the file itself. */
final class PriceForm extends FormPanel {
    private static final double GREATEST = 1_000_000;
    private static final double GREATEST_PERCENT = 1000;

    /** A price with nothing but margin in it is none. */
    private static final double GREATEST_MARGIN = 99;

    private final transient Messages messages = Messages.of(PriceForm.class);
    private final transient PriceListModel model;
    private boolean updating;

    PriceForm(PriceListModel model) {
        super("4 0 4 0");
        this.model = model;
        JComboBox<ComboBoxItem<Currency>> currency = new JComboBox<>();
        List<Currency> currencies = new ArrayList<>(Currency.getAvailableCurrencies());
        currencies.sort((one, other) -> one.getCurrencyCode().compareTo(other.getCurrencyCode()));
        currencies.stream()
                .filter(each -> each.getDefaultFractionDigits() >= 0)
                .forEach(each -> currency.addItem(new ComboBoxItem<>(each, each.getCurrencyCode())));
        bind("currency", currency, PriceList::currency, PriceList::withCurrency);
        add(
                "leather",
                GREATEST,
                list -> list.leather().amount(),
                (list, to) ->
                        list.withLeather(new LeatherPrice(to, list.leather().per())));
        JComboBox<ComboBoxItem<LeatherPrice.Per>> per = new JComboBox<>();
        StockWording wording = new StockWording(MeasureUnit.MILLIMETRE);
        for (LeatherPrice.Per each : LeatherPrice.Per.values()) {
            per.addItem(new ComboBoxItem<>(each, wording.per(each)));
        }
        bind(
                "leather_per",
                per,
                list -> list.leather().per(),
                (list, to) -> list.withLeather(new LeatherPrice(list.leather().amount(), to)));
        add("thread", GREATEST, PriceList::threadPerMetre, PriceList::withThreadPerMetre);
        add("hardware", GREATEST, PriceList::otherHardware, PriceList::withOtherHardware);
        add("finish", GREATEST, PriceList::glueAndFinish, PriceList::withGlueAndFinish);
        add("labour", GREATEST, PriceList::labourPerHour, PriceList::withLabourPerHour);
        add("overhead", GREATEST_PERCENT, PriceList::overheadPercent, PriceList::withOverheadPercent);
        add("margin", GREATEST_MARGIN, PriceList::marginPercent, PriceList::withMarginPercent);
        add("round", GREATEST, PriceList::roundTo, PriceList::withRoundTo);
        add("tax", GREATEST_PERCENT, PriceList::taxPercent, PriceList::withTaxPercent);
        addText(messages.text("price.own"));
    }

    private void add(
            String key,
            double greatest,
            Function<PriceList, BigDecimal> getter,
            BiFunction<PriceList, BigDecimal, PriceList> setter) {
        String label = messages.text("price." + key);
        ValidatedField<Double> field = FieldFactory.number(
                NumberField.of(JobFields.PRICE.name(), 0, greatest),
                getter.apply(model.all()).doubleValue());
        field.textField().setName("price " + key);
        addRow(label, field, messages.text("price." + key + ".tip"));
        field.onCommit(() -> model.change(list -> setter.apply(list, BigDecimal.valueOf(field.value()))));
        model.addListener(() -> field.setValue(getter.apply(model.all()).doubleValue()));
    }

    private <T> void bind(
            String key,
            JComboBox<ComboBoxItem<T>> box,
            Function<PriceList, T> getter,
            BiFunction<PriceList, T, PriceList> setter) {
        box.setName("price " + key);
        addRow(messages.text("price." + key), box, messages.text("price." + key + ".tip"));
        Runnable update = () -> {
            updating = true;
            ComboBoxItem.select(box, getter.apply(model.all()));
            updating = false;
        };
        update.run();
        model.addListener(update);
        box.addActionListener(e -> {
            if (!updating) {
                model.change(list -> setter.apply(list, ComboBoxItem.selected(box)));
            }
        });
    }
}
