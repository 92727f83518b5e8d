"""What the program tells about its own language: words, sentences, colours for an editor.

All of it is made from the word table and the grammar, so that it cannot fall behind them.
"""
