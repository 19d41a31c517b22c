package club.boatlib;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the configuration that was built for a boat: {@code config/dipper.csv}. */
final class Configuration {
    private Configuration() {}

    /**
     * Returns the kind of each device of the selected setup, by its name. The path is relative: run
     * programs in the workspace's folder.
     */
    static Map<String, String> kinds(String boat) {
        Path path = Paths.get("config", boat + ".csv");
        Map<String, String> kinds = new LinkedHashMap<>();
        try {
            List<String> lines = Files.readAllLines(path, StandardCharsets.UTF_8);
            List<String> head = cells(lines.get(0));
            for (String line : lines.subList(1, lines.size())) {
                List<String> row = cells(line);
                if (row.get(head.indexOf("selected")).equals("true")) {
                    kinds.put(row.get(head.indexOf("name")), row.get(head.indexOf("kind")));
                }
            }
        } catch (IOException error) {
            throw new UncheckedIOException(error);
        }
        return kinds;
    }

    /** Splits a line at commas outside quotes. */
    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : (line + ",").toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        return cells;
    }
}
