package baymist.bench;

import java.util.List;

/** Words of a call: {@code --name value} and {@code --name}. */
record Arguments(List<String> list) {
    boolean has(String name) {
        return list.contains(name);
    }

    String text(String name, String otherwise) {
        int at = list.indexOf(name);
        return at >= 0 && at + 1 < list.size() ? list.get(at + 1) : otherwise;
    }

    /** Words separated by commas. */
    List<String> texts(String name, String otherwise) {
        return List.of(text(name, otherwise).split(",", -1));
    }

    int number(String name, int otherwise) {
        return Integer.parseInt(text(name, String.valueOf(otherwise)));
    }

    double real(String name, double otherwise) {
        return Double.parseDouble(text(name, String.valueOf(otherwise)));
    }

    /** The words but those that say where to write, each after a space. */
    String words() {
        StringBuilder said = new StringBuilder();
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i).equals("--write")) {
                i++;
            } else {
                said.append(' ').append(list.get(i));
            }
        }
        return said.toString();
    }
}
