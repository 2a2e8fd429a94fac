package haywright.ranch;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/**
 * Which TDN somebody wants used for a lot, by laboratory; what is not in it goes by the rule. The key is the lot.
 *
 * @param ways by the laboratory's name, empty for none said: {@link haywright.forage.energy.EnergyChoice#way}
 */
public record EnergyPicks(UUID lot, Map<String, String> ways) {
    public EnergyPicks {
        ways = Collections.unmodifiableMap(new LinkedHashMap<>(ways));
    }

    /** @param way empty for the rule */
    public EnergyPicks with(String laboratory, String way) {
        var changed = new LinkedHashMap<>(ways);
        changed.keySet().removeIf(name -> name.strip().equalsIgnoreCase(laboratory.strip()));
        if (!way.isEmpty()) {
            changed.put(laboratory.strip(), way);
        }
        return new EnergyPicks(lot, changed);
    }
}
