package weltwright.app.gui.testing;

import java.util.Map;
import java.util.TreeMap;
import java.util.prefs.AbstractPreferences;

/** Preferences that are forgotten with the test, so that none touches those of whoever runs it. */
public final class InMemoryPreferences extends AbstractPreferences {
    private final Map<String, String> values = new TreeMap<>();

    public InMemoryPreferences() {
        super(null, "");
    }

    @Override
    protected void putSpi(String key, String value) {
        values.put(key, value);
    }

    @Override
    protected String getSpi(String key) {
        return values.get(key);
    }

    @Override
    protected void removeSpi(String key) {
        values.remove(key);
    }

    @Override
    protected void removeNodeSpi() {
        values.clear();
    }

    @Override
    protected String[] keysSpi() {
        return values.keySet().toArray(String[]::new);
    }

    @Override
    protected String[] childrenNamesSpi() {
        return new String[0];
    }

    @Override
    protected AbstractPreferences childSpi(String name) {
        throw new UnsupportedOperationException();
    }

    @Override
    protected void syncSpi() {}

    @Override
    protected void flushSpi() {}
}
