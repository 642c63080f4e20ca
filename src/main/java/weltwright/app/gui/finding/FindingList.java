package weltwright.app.gui.finding;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import weltwright.sheath.pattern.Severity;

/** All findings of the job, and whether their list is open. Used on the event thread. */
public final class FindingList {
    private final Map<Finding.Place, List<Finding>> byPlace = new EnumMap<>(Finding.Place.class);
    private final List<Runnable> listeners = new ArrayList<>();
    private Consumer<Finding.Place> navigator = place -> {};
    private boolean open;

    /** Sets what makes the drawing of a place visible. */
    public void onShow(Consumer<Finding.Place> newNavigator) {
        navigator = newNavigator;
    }

    /** Replaces the findings of one place. */
    public void set(Finding.Place place, List<Finding> findings) {
        byPlace.put(place, List.copyOf(findings));
        notifyListeners();
    }

    /** Returns all findings, the most severe first; what two places tell alike is told once. */
    public List<Finding> all() {
        Map<String, Finding> all = new LinkedHashMap<>();
        byPlace.values().stream()
                .flatMap(Collection::stream)
                .sorted(Comparator.comparing(Finding::severity))
                .forEach(finding -> all.putIfAbsent(finding.text(), finding));
        return List.copyOf(all.values());
    }

    public long count(Severity severity) {
        return all().stream().filter(finding -> finding.severity() == severity).count();
    }

    /** Makes the drawing of a finding's place visible, and shows where the finding is. */
    public void show(Finding finding) {
        navigator.accept(finding.place());
        finding.show().run();
    }

    /** Returns whether the list is open; listeners are told when that changes. */
    public boolean isOpen() {
        return open;
    }

    void setOpen(boolean newOpen) {
        open = newOpen;
        notifyListeners();
    }

    /** Adds a listener that is called whenever findings have changed, or the list was opened or closed. */
    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    private void notifyListeners() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
