"""The language server: what an editor shows while the notes are typed.

What is answered stands in plain functions of a text and a place in it; `server` only carries
questions and answers over the Language Server Protocol.  Like the command line, this is a front of
the program: it may use every room, and no room uses it.
"""
