package baymist.airflow;

/** Disjoint sets with path halving; the lowest member is the root, so the result does not depend on the order of joins. */
final class UnionFind {
    private final int[] parent;
    private int sets;

    UnionFind(int count) {
        parent = new int[count];
        for (int i = 0; i < count; i++) {
            parent[i] = i;
        }
        sets = count;
    }

    int root(int i) {
        int r = i;
        while (parent[r] != r) {
            parent[r] = parent[parent[r]];
            r = parent[r];
        }
        return r;
    }

    void join(int i, int j) {
        int a = root(i);
        int b = root(j);
        if (a != b) {
            parent[Math.max(a, b)] = Math.min(a, b);
            sets--;
        }
    }

    int sets() {
        return sets;
    }

    /** Set number of each member, numbered by lowest member. */
    int[] numbered() {
        int[] number = new int[parent.length];
        int next = 0;
        for (int i = 0; i < parent.length; i++) {
            int r = root(i);
            number[i] = r == i ? next++ : number[r];
        }
        return number;
    }
}
